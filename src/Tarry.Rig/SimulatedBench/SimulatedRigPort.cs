using Tarry.Rig.Link;

namespace Tarry.Rig.SimulatedBench;

/// <summary>One opening of a simulated bench's port.</summary>
internal sealed class SimulatedRigPort(SimulatedRigPortSource bench, int opening) : IRigPort
{
    public bool IsDead => bench.ConnectedTo != opening;

    public int Read(Span<byte> buffer, TimeSpan timeout) => IsDead ? 0 : bench.Read(this, buffer, timeout);

    public void Write(ReadOnlySpan<byte> bytes)
    {
        if (!IsDead)
        {
            bench.Write(bytes);
        }
    }

    public void Dispose()
    {
        if (!IsDead)
        {
            bench.Disconnect();
        }
    }
}
