using Tarry.Rig.Link;

namespace Tarry.Rig.Tests.Runs;

/// <summary>A host that can be killed: from then on nothing of it reaches the rig, not even a farewell.</summary>
internal sealed class DyingPortSource(IRigPortSource inner) : IRigPortSource
{
    private bool killed;

    public string Name => inner.Name;

    public TimeProvider Time => inner.Time;

    public void Kill()
    {
        killed = true;
        throw new InvalidOperationException("killed");
    }

    public IRigPort Open() => new Port(this, inner.Open());

    public void Pause(TimeSpan time, CancellationToken cancellation) => inner.Pause(time, cancellation);

    private sealed class Port(DyingPortSource source, IRigPort port) : IRigPort
    {
        public bool IsDead => source.killed || port.IsDead;

        public int Read(Span<byte> buffer, TimeSpan timeout) => source.killed ? 0 : port.Read(buffer, timeout);

        public void Write(ReadOnlySpan<byte> bytes)
        {
            if (!source.killed)
            {
                port.Write(bytes);
            }
        }

        public void Dispose() => port.Dispose();
    }
}
