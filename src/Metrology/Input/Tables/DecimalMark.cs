namespace Ramwright.Metrology.Input.Tables;

/// <summary>The mark before the decimals.</summary>
public enum DecimalMark { Point, Comma }
