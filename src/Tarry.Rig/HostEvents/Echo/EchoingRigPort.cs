using Tarry.Rig.Link;

namespace Tarry.Rig.HostEvents.Echo;

/// <summary>A port to the rig that an echo may write to, from its own thread, beside the frames.</summary>
internal sealed class EchoingRigPort : IRigPort
{
    private const long BaudRate = 250_000;
    private const int BitsPerByte = 10;
    private readonly IRigPort inner;
    private readonly HostEcho echo;
    private readonly TimeProvider time;
    private long framesOutAt;

    public EchoingRigPort(IRigPort inner, HostEcho echo, TimeProvider time)
    {
        this.inner = inner;
        this.echo = echo;
        this.time = time;
        inner.PrepareEcho();
    }

    public bool IsDead => inner.IsDead;

    public int Read(Span<byte> buffer, TimeSpan timeout) => inner.Read(buffer, timeout);

    public void Write(ReadOnlySpan<byte> bytes)
    {
        var begins = Math.Max(time.GetTimestamp(), Volatile.Read(ref framesOutAt));
        Volatile.Write(ref framesOutAt, begins + (bytes.Length * BitsPerByte * time.TimestampFrequency / BaudRate));
        inner.Write(bytes);
    }

    /// <summary>Sends the echo.</summary>
    /// <param name="behindAFrame">Whether a frame is on the line before it, by the line's rate.</param>
    /// <returns>Whether it was taken.</returns>
    public bool TryEcho(out bool behindAFrame)
    {
        var sent = inner.TryEcho();
        behindAFrame = time.GetTimestamp() < Volatile.Read(ref framesOutAt);
        return sent;
    }

    public void Dispose()
    {
        echo.Detach(this);
        inner.Dispose();
    }
}
