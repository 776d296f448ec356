using System.Buffers.Binary;

namespace Tarry.Rig.HostEvents.Linux;

/// <summary>A hidraw device: every report as the device sent it, also one that changes nothing. The kernel gives no stamp, so arrival is stamped here.</summary>
internal sealed class HidrawDevice(DeviceFile file, string path, TimeProvider time) : IHostInputDevice
{
    // HID_MAX_BUFFER_SIZE of the kernel: a read never cuts a report.
    private const int LongestReport = 16_384;
    private const int NameLength = 256;
    private const int DescriptorLength = 4096;
    private readonly byte[] buffer = new byte[LongestReport];

    public HostInputDescription Description { get; } = Describe(file, path);

    public InputClock Clock => InputClock.Arrival;

    public long Losses => 0;

    /// <summary>One read is one report.</summary>
    public bool Read(TimeSpan timeout, InputReportHandler onReport)
    {
        file.Wait(timeout);
        var count = file.Read(buffer);
        if (count > 0)
        {
            onReport(new InputReport { StampNanoseconds = Clock.Now(time), Bytes = buffer.AsSpan(0, count) });
        }

        return count >= 0;
    }

    public void Dispose() => file.Dispose();

    public static HostInputDescription Describe(DeviceFile file, string path)
    {
        var identity = new byte[8];
        var known = file.Ask(IoctlRequest.HidIdentity, identity) >= 0;
        var descriptor = Descriptor(file);
        return new HostInputDescription
        {
            Path = path,
            Name = EvdevDescription.Text(file, IoctlRequest.HidName(NameLength), NameLength) ?? "(no name)",
            Bus = known ? EvdevDescription.BusName((ushort)BinaryPrimitives.ReadUInt32LittleEndian(identity)) : null,
            Vendor = known ? BinaryPrimitives.ReadUInt16LittleEndian(identity.AsSpan(4)) : null,
            Product = known ? BinaryPrimitives.ReadUInt16LittleEndian(identity.AsSpan(6)) : null,
            ReportDescriptor = descriptor,
            IsTextKeyboard = NamesKeyboardUsages(descriptor),
        };
    }

    private static byte[] Descriptor(DeviceFile file)
    {
        var size = new byte[sizeof(int)];
        if (file.Ask(IoctlRequest.HidDescriptorSize, size) < 0)
        {
            return [];
        }

        var length = Math.Clamp(BinaryPrimitives.ReadInt32LittleEndian(size), 0, DescriptorLength);
        var bytes = new byte[sizeof(int) + DescriptorLength];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, length);
        return file.Ask(IoctlRequest.HidDescriptor, bytes) >= 0 ? bytes[sizeof(int)..(sizeof(int) + length)] : [];
    }

    /// <summary>Whether usage page 7, keys, is named: item 0x05 with data 07 (HID 1.11, 6.2.2.7). Data that happens to look so only makes the caution come once too often.</summary>
    private static bool NamesKeyboardUsages(ReadOnlySpan<byte> descriptor) => descriptor.IndexOf([(byte)0x05, (byte)0x07]) >= 0;
}
