using Tarry.Rig.Link;

namespace Tarry.Rig.SimulatedBench;

/// <summary>Holds a simulated bench back to a multiple of real time, so that it can be watched. What it says stays the same byte for byte.</summary>
/// <remarks>A machine that cannot keep up is not chased: the bench goes on from where it is.</remarks>
public sealed class PacedPortSource : IRigPortSource
{
    private static readonly TimeSpan ShortestWait = TimeSpan.FromMilliseconds(5);
    private static readonly TimeSpan MostBehind = TimeSpan.FromMilliseconds(500);
    private readonly IRigPortSource inner;
    private readonly double speed;
    private readonly TimeProvider real;
    private readonly CancellationToken hurry;
    private long benchStart;
    private long realStart;

    /// <summary>A bench held back.</summary>
    /// <param name="inner">The simulated bench.</param>
    /// <param name="speed">Seconds of the bench in one second, more than zero.</param>
    /// <param name="real">The clock to keep pace with.</param>
    /// <param name="hurry">Once cancelled the bench is held back no more, so that what is in flight comes at once.</param>
    public PacedPortSource(IRigPortSource inner, double speed, TimeProvider real, CancellationToken hurry = default)
    {
        ArgumentNullException.ThrowIfNull(inner);
        ArgumentNullException.ThrowIfNull(real);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(speed);
        this.inner = inner;
        this.speed = speed;
        this.real = real;
        this.hurry = hurry;
        Restart();
    }

    /// <inheritdoc/>
    public string Name => inner.Name;

    /// <inheritdoc/>
    public TimeProvider Time => inner.Time;

    /// <inheritdoc/>
    public IRigPort Open() => new PacedPort(inner.Open(), this);

    /// <inheritdoc/>
    public void Pause(TimeSpan time, CancellationToken cancellation)
    {
        inner.Pause(time, cancellation);
        KeepPace();
    }

    private void KeepPace()
    {
        var ahead = (inner.Time.GetElapsedTime(benchStart) / speed) - real.GetElapsedTime(realStart);
        if (ahead < -MostBehind)
        {
            Restart();
        }
        else if (ahead >= ShortestWait && !hurry.IsCancellationRequested)
        {
            Task.Delay(ahead, real, hurry).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default).Wait(CancellationToken.None);
        }
    }

    private void Restart() => (benchStart, realStart) = (inner.Time.GetTimestamp(), real.GetTimestamp());

    private sealed class PacedPort(IRigPort port, PacedPortSource source) : IRigPort
    {
        public bool IsDead => port.IsDead;

        public int Read(Span<byte> buffer, TimeSpan timeout)
        {
            var count = port.Read(buffer, timeout);
            source.KeepPace();
            return count;
        }

        public void Write(ReadOnlySpan<byte> bytes) => port.Write(bytes);

        public void PrepareEcho() => port.PrepareEcho();

        public bool TryEcho() => port.TryEcho();

        public void Dispose() => port.Dispose();
    }
}
