namespace Tarry.Rig.HostEvents.Echo;

/// <summary>Reads a device on a thread that does nothing else, in real time where the system allows it.</summary>
/// <remarks>A device that goes, as a pad that switches itself off, is opened again when it is back.</remarks>
/// <param name="open">Opens the device.</param>
public sealed class HostInputFeed(Func<IHostInputDevice> open) : IHostInputFeed, IDisposable
{
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(100);
    private readonly ManualResetEventSlim raised = new();
    private readonly ManualResetEventSlim stopped = new();
    private IHostInputDevice device = open();
    private Thread? thread;
    private long lossesBefore;

    /// <inheritdoc/>
    public HostInputDescription Description => device.Description;

    /// <inheritdoc/>
    public InputClock Clock => device.Clock;

    /// <inheritdoc/>
    public TimeProvider Time => TimeProvider.System;

    /// <inheritdoc/>
    public long Losses => lossesBefore + device.Losses;

    /// <inheritdoc/>
    public int Absences { get; private set; }

    /// <inheritdoc/>
    public bool IsRealTime { get; private set; }

    /// <inheritdoc/>
    public void Begin(InputReportHandler onReport)
    {
        thread = new Thread(() => Run(onReport)) { Name = "host input", IsBackground = true };
        thread.Start();
        raised.Wait();
    }

    /// <inheritdoc/>
    public void End() => Dispose();

    /// <inheritdoc/>
    public void Dispose()
    {
        stopped.Set();
        if (thread is null)
        {
            device.Dispose();
        }

        thread?.Join();
    }

    private void Run(InputReportHandler onReport)
    {
        IsRealTime = RealTimePriority.TryRaise();
        raised.Set();
        while (!stopped.IsSet)
        {
            if (!device.Read(Turn, onReport))
            {
                Reopen();
            }
        }

        // On Windows only the thread that listened can let go.
        device.Dispose();
    }

    private void Reopen()
    {
        Absences++;
        while (!stopped.Wait(Turn))
        {
            try
            {
                var again = open();
                lossesBefore += device.Losses;
                device.Dispose();
                device = again;
                return;
            }
            catch (HostInputException)
            {
                // Still gone.
            }
        }
    }
}
