using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Web.Bench;

namespace Tarry.Web.Sticks;

/// <summary>What records a stick: the rig at its wipers, or this computer reading a device. Disposed of when the recording is over.</summary>
internal interface IStickWork : IDisposable
{
    /// <summary>What a card asks for.</summary>
    /// <param name="card">What is recorded.</param>
    /// <param name="ports">Where rigs and devices are.</param>
    /// <param name="time">The clock of the steps, where no rig has one.</param>
    /// <param name="stop">Cancelled when the recording is stopped.</param>
    static IStickWork Of(StickCard card, IBenchPorts ports, TimeProvider time, CancellationToken stop)
    {
        if (!card.IsOfDevice)
        {
            return new RigStickWork(ports.Stick(card, stop), card);
        }

        var device = ports.Device(card.Source);
        try
        {
            return new HostStickWork(device, card, time);
        }
        catch
        {
            device.Dispose();
            throw;
        }
    }

    /// <summary>Records, and seals what came.</summary>
    /// <param name="study">The study.</param>
    /// <param name="held">Its lock.</param>
    /// <param name="progress">Told where it stands.</param>
    /// <param name="discards">Asked at the end: whether what came is to be removed instead.</param>
    /// <param name="stop">Stops it in good order.</param>
    StickCaptureResult Record(Study study, StudyLock held, IProgress<StickProgress> progress, Func<bool> discards, CancellationToken stop);
}
