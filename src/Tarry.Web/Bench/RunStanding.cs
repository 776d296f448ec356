namespace Tarry.Web.Bench;

/// <summary>How a run on the bench stands.</summary>
public enum RunStanding
{
    /// <summary>It captures, or is about to.</summary>
    Running,

    /// <summary>It was asked to stop, and takes the trial in flight.</summary>
    Stopping,

    /// <summary>Stopped; its journal is on the disk and goes on.</summary>
    Paused,

    /// <summary>The rig or the disk failed; what was captured is on the disk and goes on.</summary>
    Failed,

    /// <summary>It reached its end and is sealed.</summary>
    Sealed,
}
