namespace Tarry.Rig.Frames;

/// <summary>Why a run is over.</summary>
public enum RunEndReason
{
    /// <summary>The number of trials asked for is reached.</summary>
    Count,

    /// <summary>The host stopped it.</summary>
    Stop,
}
