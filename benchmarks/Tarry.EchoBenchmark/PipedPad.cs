using System.Buffers.Binary;
using System.IO.Pipes;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Linux;

namespace Tarry.EchoBenchmark;

/// <summary>An input device at the other end of a pipe: the bytes of evdev, stamped as they are written.</summary>
internal sealed class PipedPad : IHostInputDevice
{
    private const ushort Button = 0x130;
    private readonly AnonymousPipeServerStream writing = new(PipeDirection.Out);
    private readonly AnonymousPipeClientStream reading;
    private readonly EvdevFraming framing = new(EvdevFraming.NativeEventSize, _ => { });
    private readonly byte[] buffer = new byte[64 * EvdevFraming.NativeEventSize];

    public PipedPad() => reading = new AnonymousPipeClientStream(PipeDirection.In, writing.ClientSafePipeHandle);

    public HostInputDescription Description { get; } = new() { Path = "pipe", Name = "Pad at a pipe", Buttons = [Button] };

    public InputClock Clock => InputClock.KernelMonotonic;

    public long Losses => framing.Losses;

    public bool Read(TimeSpan timeout, InputReportHandler onReport)
    {
        var count = reading.Read(buffer);
        framing.Push(buffer.AsSpan(0, count), onReport);
        return count > 0;
    }

    public void Tell(bool down)
    {
        Span<byte> report = stackalloc byte[48];
        report.Clear();
        var stamp = Clock.Now(TimeProvider.System);
        for (var at = 0; at < report.Length; at += 24)
        {
            BinaryPrimitives.WriteInt64LittleEndian(report[at..], stamp / 1_000_000_000);
            BinaryPrimitives.WriteInt64LittleEndian(report[(at + 8)..], stamp % 1_000_000_000 / 1000);
        }

        BinaryPrimitives.WriteUInt16LittleEndian(report[16..], InputCode.Key);
        BinaryPrimitives.WriteUInt16LittleEndian(report[18..], Button);
        BinaryPrimitives.WriteInt32LittleEndian(report[20..], down ? 1 : 0);
        writing.Write(report);
    }

    public void EndTelling() => writing.Dispose();

    public void Dispose() => reading.Dispose();
}
