namespace Tarry.Web.Sticks;

/// <summary>How a recording of a stick stands.</summary>
public enum StickRunStanding
{
    /// <summary>It records, or is about to.</summary>
    Recording,

    /// <summary>It was asked to end, or has done its last step, and is being sealed.</summary>
    Ending,

    /// <summary>It is sealed.</summary>
    Sealed,

    /// <summary>It ended before a reading of the procedure had come; there is nothing to keep.</summary>
    Empty,

    /// <summary>It was discarded.</summary>
    Discarded,

    /// <summary>The rig or the disk failed; what came before is where the page says.</summary>
    Failed,
}
