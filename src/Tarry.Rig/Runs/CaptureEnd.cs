namespace Tarry.Rig.Runs;

/// <summary>Why the capture of one of the rig's runs ended.</summary>
internal enum CaptureEnd
{
    /// <summary>The rig's run is over and all of it is recorded.</summary>
    RunOver,

    /// <summary>The user stopped it.</summary>
    Cancelled,

    /// <summary>The rig restarted.</summary>
    Restarted,

    /// <summary>The rig or its port is gone.</summary>
    Lost,
}
