namespace Tarry.Studies.Trials;

/// <summary>What else happened in a trial; bits as on the rig's line (<c>docs/protocol.md</c>) and on disk.</summary>
[Flags]
public enum TrialFlags
{
    /// <summary>Nothing else.</summary>
    None = 0,

    /// <summary>More than one response edge.</summary>
    Bounced = 1,

    /// <summary>The response line was active at the press.</summary>
    LineActiveAtPress = 2,

    /// <summary>An edge came between the end of the trial before and this press.</summary>
    StrayEdgeBefore = 4,

    /// <summary>The press waited for the host, so its interval is not the drawn one.</summary>
    WaitedForHost = 8,
}
