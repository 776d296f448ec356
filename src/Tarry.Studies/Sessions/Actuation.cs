namespace Tarry.Studies.Sessions;

/// <summary>What a press of a live run moved.</summary>
/// <param name="Kind"><c>contact</c>, <c>matrix</c> (a strobed contact), <c>axis</c>, or <c>reference</c> (the rig is the input device).</param>
/// <param name="Axis">How the axis moved; null unless the kind is <c>axis</c>.</param>
public sealed record Actuation(string Kind, AxisActuation? Axis = null)
{
    /// <summary>A contact.</summary>
    public const string Contact = "contact";

    /// <summary>A contact of a matrix that its device strobes.</summary>
    public const string Matrix = "matrix";

    /// <summary>An axis between two levels.</summary>
    public const string AxisKind = "axis";

    /// <summary>Reference mode.</summary>
    public const string Reference = "reference";

    /// <summary>What is wrong with it, or null.</summary>
    public string? Broken() => Kind switch
    {
        Contact or Matrix or Reference => Axis is null ? null : $"the actuation '{Kind}' has no axis",
        AxisKind => Axis is null ? "the actuation 'axis' does not say how the axis moved" : Axis.Broken(),
        _ => $"'{Kind}' is no actuation",
    };
}
