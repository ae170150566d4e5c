namespace Ramwright.Instruments;

/// <summary>Units in which readings may be written. A force is turned into a pressure by the ram area.</summary>
public enum ReadingUnit { Bar, Megapascal, Kilopascal, Psi, Kilonewton }
