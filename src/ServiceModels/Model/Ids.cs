namespace Ramwright.ServiceModels.Model;

/// <summary>The id of a part or of a state; both share one namespace. Lower case with hyphens.</summary>
public readonly record struct NodeId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of a shop tool, bought or made.</summary>
public readonly record struct ToolId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of a posture: how the work is held.</summary>
public readonly record struct PostureId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of a kit.</summary>
public readonly record struct KitId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of a unit that is made up beforehand and goes in as one.</summary>
public readonly record struct UnitId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of an inspection.</summary>
public readonly record struct InspectionId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of a fault.</summary>
public readonly record struct FaultId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of a symptom.</summary>
public readonly record struct SymptomId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of a check.</summary>
public readonly record struct CheckId(string Value)
{
    public override string ToString() => Value;
}

/// <summary>The id of a remedy.</summary>
public readonly record struct RemedyId(string Value)
{
    public override string ToString() => Value;
}
