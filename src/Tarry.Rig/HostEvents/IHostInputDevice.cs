namespace Tarry.Rig.HostEvents;

/// <summary>An open input device of the host.</summary>
public interface IHostInputDevice : IDisposable
{
    /// <summary>What it is.</summary>
    HostInputDescription Description { get; }

    /// <summary>The clock of its stamps.</summary>
    InputClock Clock { get; }

    /// <summary>How often the system lost reports because they were not read in time.</summary>
    long Losses { get; }

    /// <summary>Waits for reports, at most as long as given, and hands on all that are there.</summary>
    /// <returns>False when the device is gone; it stays gone.</returns>
    bool Read(TimeSpan timeout, InputReportHandler onReport);
}
