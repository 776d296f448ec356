using System.Text;
using Tarry.Rig.Link;
using Tarry.Rig.Tests.Frames;

namespace Tarry.Rig.Tests.Link;

/// <summary>A line that changes frames on their way, soundly sealed: what comes back is what the rig is made to say; null for nothing.</summary>
internal sealed class TamperingPortSource(IRigPortSource inner, Func<string, string?> fromRig, Func<string, string?>? toRig = null) : IRigPortSource
{
    public string Name => inner.Name;

    public TimeProvider Time => inner.Time;

    public IRigPort Open() => new Port(inner.Open(), fromRig, toRig ?? (body => body));

    public void Pause(TimeSpan time, CancellationToken cancellation) => inner.Pause(time, cancellation);

    private sealed class Port(IRigPort port, Func<string, string?> fromRig, Func<string, string?> toRig) : IRigPort
    {
        public bool IsDead => port.IsDead;

        public int Read(Span<byte> buffer, TimeSpan timeout)
        {
            // A simulated port gives one frame at a time.
            var count = port.Read(buffer, timeout);
            return count == 0 || fromRig(Body(buffer[..count])) is not { } body ? 0 : Copy(PlainFrame.Seal(body), buffer);
        }

        public void Write(ReadOnlySpan<byte> bytes)
        {
            if (toRig(Body(bytes)) is { } body)
            {
                port.Write(PlainFrame.Seal(body));
            }
        }

        public void Dispose() => port.Dispose();

        private static string Body(ReadOnlySpan<byte> bytes) => Encoding.ASCII.GetString(bytes[..^6]);

        private static int Copy(byte[] bytes, Span<byte> buffer)
        {
            bytes.CopyTo(buffer);
            return bytes.Length;
        }
    }
}
