using System.Globalization;
using System.Runtime;
using Tarry.Rig.Link;

namespace Tarry.Rig.HostEvents.Echo;

/// <summary>
/// The host's answer in echo mode: as an input device tells of the press, the byte 0x06 goes to the rig, and how long the host took
/// for it is counted.
/// </summary>
/// <remarks>
/// The way from a report to the byte is one comparison and one system call; it takes no memory, so it sets off no collection, and was gone
/// once before the run, so that nothing is compiled on it.
/// </remarks>
public sealed class HostEcho : IDisposable
{
    private readonly IHostInputFeed feed;
    private readonly EchoTrigger trigger;
    private readonly Lock gate = new();
    private EchoingRigPort? port;
    private GCLatencyMode? latencyBefore;

    /// <summary>An echo that has not begun.</summary>
    /// <param name="feed">The device; the echo disposes of it.</param>
    /// <param name="trigger">Which of its changes is the press.</param>
    public HostEcho(IHostInputFeed feed, EchoTrigger trigger)
    {
        ArgumentNullException.ThrowIfNull(feed);
        ArgumentNullException.ThrowIfNull(trigger);
        this.feed = feed;
        this.trigger = trigger;
    }

    /// <summary>How long the host took, from the stamp of an event to the byte handed to the driver.</summary>
    public EchoDelays Delays { get; } = new();

    /// <summary>Presses that could not be echoed, because the port was gone or took no byte.</summary>
    public long Unsent { get; private set; }

    /// <summary>Echoes that were written while a frame to the rig was still on the line, and so went out after it.</summary>
    public long BehindAFrame { get; private set; }

    /// <summary>Begins to listen. What comes before a port is there is not echoed.</summary>
    public void Begin()
    {
        WarmUp();
        latencyBefore = GCSettings.LatencyMode;
        GCSettings.LatencyMode = GCLatencyMode.SustainedLowLatency;
        feed.Begin(Take);
    }

    /// <summary>Stops listening.</summary>
    public void Dispose()
    {
        feed.End();
        if (latencyBefore is { } before)
        {
            GCSettings.LatencyMode = before;
            latencyBefore = null;
        }
    }

    /// <summary>Who echoes what, for the session's record.</summary>
    public string Introduction
    {
        get
        {
            var device = feed.Description;
            return $"echo: {trigger.Name} of {device.Name} ({device.Identity()}), stamps: {feed.Clock.InWords()}, "
                + (feed.IsRealTime ? "thread in real time" : "thread at normal priority: the system allows no more");
        }
    }

    /// <summary>How the host did, for the session's record.</summary>
    public string Summary
    {
        get
        {
            lock (gate)
            {
                var delays = Delays.Count == 0
                    ? "no press was echoed"
                    : string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Delays.Count} presses echoed; from the stamp to the byte handed to the driver, us: mean {Delays.MeanUs:0.0}, p05 {Delays.QuantileUs(0.05)}, median {Delays.QuantileUs(0.5)}, p95 {Delays.QuantileUs(0.95)}, p99 {Delays.QuantileUs(0.99)}, max {Delays.MaximumUs}");
                return $"echo: {delays}"
                    + Counted(BehindAFrame, "went out behind a frame to the rig")
                    + Counted(Unsent, "could not be sent")
                    + Counted(trigger.LostPresses, "came in after the system had lost reports, and were not echoed")
                    + Counted(feed.Losses, "times the system lost reports")
                    + Counted(feed.Absences, "times the device was gone")
                    + Counted(Delays.FromTheFuture, "stamps were ahead of the clock");
            }
        }
    }

    internal void Attach(EchoingRigPort opened)
    {
        lock (gate)
        {
            port = opened;
        }
    }

    internal void Detach(EchoingRigPort closing)
    {
        lock (gate)
        {
            port = port == closing ? null : port;
        }
    }

    private static string Counted(long count, string what) => count > 0 ? string.Create(CultureInfo.InvariantCulture, $"; {count} {what}") : "";

    private void Take(InputReport report)
    {
        if (trigger.Sees(report))
        {
            Answer(report.StampNanoseconds);
        }
    }

    private void Answer(long stamp)
    {
        lock (gate)
        {
            if (port is null || !port.TryEcho(out var behind))
            {
                Unsent++;
                return;
            }

            Delays.Add(feed.Clock.Now(feed.Time) - stamp);
            BehindAFrame += behind ? 1 : 0;
        }
    }

    private void WarmUp()
    {
        Take(default);
        var before = port;
        port = new EchoingRigPort(new PortToNowhere(), this, feed.Time);
        Answer(0);
        Delays.Clear();
        (Unsent, BehindAFrame, port) = (0, 0, before);
    }

    private sealed class PortToNowhere : IRigPort
    {
        public bool IsDead => false;

        public int Read(Span<byte> buffer, TimeSpan timeout) => 0;

        public void Write(ReadOnlySpan<byte> bytes)
        {
        }

        public void Dispose()
        {
        }
    }
}
