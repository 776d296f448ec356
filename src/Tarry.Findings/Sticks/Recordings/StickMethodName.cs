namespace Tarry.Findings.Sticks.Recordings;

/// <summary>The names of the methods by which intervals of sticks are found; each has a section in <c>docs/methods/sticks.md</c>.</summary>
public static class StickMethodName
{
    /// <summary>One session: Student's t over its replicates.</summary>
    public const string WithinSession = "t-over-replicates-within-one-session";

    /// <summary>Several sessions: Student's t over their values, moderated variance.</summary>
    public const string OverSessions = "moderated-t-over-sessions";

    /// <summary>The length of a vector of two estimated components.</summary>
    public const string DistanceOfAPoint = "noncentral-f-of-a-distance";

    /// <summary>A layer beside the same condition without: Welch's t, or the jackknife over sweeps.</summary>
    public const string LayerAgainstNone = "layer-against-none";

    /// <summary>All positions were one and the same.</summary>
    public const string NotToldFromNone = "within-one-step";
}
