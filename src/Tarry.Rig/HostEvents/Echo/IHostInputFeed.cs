namespace Tarry.Rig.HostEvents.Echo;

/// <summary>An input device that hands on its reports by itself, as they come.</summary>
public interface IHostInputFeed
{
    /// <summary>The device.</summary>
    HostInputDescription Description { get; }

    /// <summary>The clock of its stamps.</summary>
    InputClock Clock { get; }

    /// <summary>The clocks of the host that has it.</summary>
    TimeProvider Time { get; }

    /// <summary>How often the system lost reports.</summary>
    long Losses { get; }

    /// <summary>How often the device was gone.</summary>
    int Absences { get; }

    /// <summary>Whether it is read before everything else the machine does.</summary>
    bool IsRealTime { get; }

    /// <summary>Begins to hand reports on, on a thread of its own choice, until <see cref="End"/>.</summary>
    void Begin(InputReportHandler onReport);

    /// <summary>Hands on no more, and lets the device go. Once is enough; more do no harm.</summary>
    void End();
}
