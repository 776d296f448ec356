using Tarry.Imports.HidReports;
using Tarry.Imports.PacketCapture;
using Tarry.Metrology;

namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>Small valid inputs of every kind, damaged at random from a seed, and read: whatever the bytes, reading ends and says what it found.</summary>
internal static class CaptureMutations
{
    // A reader may hold one buffer and what the input holds; the first report of each of many devices costs a few hundred bytes.
    private const long MostAllocated = 16_000_000;
    private static readonly byte[] Interesting = [0, 1, 2, 3, 4, 6, 8, 0x0A, 0x0D, 0x1A, 0x40, 0x7F, 0x80, 0xA1, 0xFE, 0xFF];
    private static readonly byte[][] Reports = [.. SampleCaptures.Reports(21, 3, 11, 1)];
    private static readonly byte[][] MouseReports = [.. SampleCaptures.Reports(22, 3, 3)];

    /// <summary>The readers that inputs are made for.</summary>
    public static readonly string[] Readers = ["pcap", "pcapng", "btsnoop", "hid-descriptor"];

    /// <summary>Reads one damaged input.</summary>
    /// <param name="reader">One of <see cref="Readers"/>.</param>
    /// <param name="seed">The seed of the run.</param>
    /// <param name="number">Which input of the run.</param>
    /// <exception cref="InvalidOperationException">The reader failed in a way that it must not; the message says with which input.</exception>
    public static void Read(string reader, ulong seed, ulong number)
    {
        var generator = SeededGenerator.ForPart(seed, number);
        var seeds = Seeds[reader];
        var input = Damaged(seeds[generator.NextInt32(seeds.Length)], seeds, generator);
        var before = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            if (reader == "hid-descriptor")
            {
                ReadDescriptor(input);
            }
            else
            {
                ReadCapture(input);
            }
        }
        catch (Exception failure)
        {
            throw new InvalidOperationException($"{reader}, seed {seed}, input {number}: {failure.GetType().Name}: {failure.Message}\n{Convert.ToHexString(input)}", failure);
        }

        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        if (allocated > MostAllocated)
        {
            throw new InvalidOperationException($"{reader}, seed {seed}, input {number}: {allocated} bytes were allocated for {input.Length}\n{Convert.ToHexString(input)}");
        }
    }

    private static readonly Dictionary<string, byte[][]> Seeds = new()
    {
        ["pcap"] =
        [
            SampleFiles.Pcap(220, SampleCaptures.Usb(SampleDescriptors.Gamepad, Reports, maxPacket: 16)),
            SampleFiles.Pcap(220, SampleCaptures.Usb(SampleDescriptors.Gamepad, Reports, bigEndian: true), nanoseconds: true, bigEndian: true),
            SampleFiles.Pcap(189, SampleCaptures.Usb(SampleDescriptors.Mouse, MouseReports, mapped: false)),
            SampleFiles.Pcap(249, SampleCaptures.UsbPcap(SampleDescriptors.Gamepad, Reports)),
        ],
        ["pcapng"] =
        [
            SampleFiles.PcapNg(220, SampleCaptures.Usb(SampleDescriptors.Gamepad, Reports, maxPacket: 16)),
            SampleFiles.PcapNg(220, SampleCaptures.Usb(SampleDescriptors.Mouse, MouseReports, bigEndian: true), bigEndian: true),
            SampleFiles.PcapNg(201, SampleCaptures.LowEnergy(SampleDescriptors.Gamepad, 1, Reports).Select(packet => packet with { Data = [0, 0, 0, (byte)(packet.Flags & 1), .. packet.Data] })),
            SampleFiles.PcapNg(254, SampleCaptures.Classic(SampleDescriptors.Mouse, MouseReports, 9).Select(packet => packet with { Data = [0, 0, 0, (byte)(packet.Data[0] == 4 ? 3 : 4 + (packet.Flags & 1)), .. packet.Data.AsSpan(1)] })),
        ],
        ["btsnoop"] =
        [
            SampleFiles.BtSnoop(1002, SampleCaptures.LowEnergy(SampleDescriptors.Gamepad, 1, Reports)),
            SampleFiles.BtSnoop(1002, SampleCaptures.Classic(SampleDescriptors.Mouse, MouseReports, 9)),
            SampleFiles.BtSnoop(1001, SampleCaptures.Classic(SampleDescriptors.Mouse, MouseReports).Select(packet => packet with { Data = packet.Data[1..], Flags = packet.Flags | (packet.Data[0] == 4 ? 2u : 0) })),
            SampleFiles.BtSnoop(2001, SampleCaptures.LowEnergy(SampleDescriptors.Gamepad, 1, Reports).Select(packet => packet with { Data = packet.Data[1..], Flags = packet.Data[0] == 4 ? 3 : 4 + (packet.Flags & 1) })),
        ],
        ["hid-descriptor"] = [SampleDescriptors.Gamepad, SampleDescriptors.Keyboard, SampleDescriptors.Mouse],
    };

    private static void ReadCapture(byte[] input)
    {
        using var stream = new MemoryStream(input, writable: false);
        var capture = InputCapture.Read(stream);
        foreach (var device in capture?.Devices ?? [])
        {
            var notes = new List<string>();
            var fields = DeviceFields.Of(device, null, notes);
            if (fields.Broken() is { } broken)
            {
                throw new InvalidDataException(broken);
            }

            for (var index = 0; index < device.Log.Count; index++)
            {
                foreach (var field in fields.Fields)
                {
                    _ = field.ValueIn(device.Log.Data(index));
                }
            }
        }

        if (capture?.Defects.First.FirstOrDefault(defect => defect.Offset < 0 || defect.Offset > input.Length || defect.Message.Length == 0) is { } wrong)
        {
            throw new InvalidDataException($"A defect has the place {wrong.Offset} and the message '{wrong.Message}'.");
        }
    }

    private static void ReadDescriptor(byte[] input)
    {
        var descriptor = HidReportDescriptor.Parse(input);
        var (fields, _) = HidReportFields.Of(descriptor, 1, descriptor.UsesReportIds);
        foreach (var field in fields)
        {
            _ = field.ValueIn(input);
        }

        _ = HidDescriptorText.Lines(descriptor).Sum(line => line.Length);
        if (descriptor.Problems.FirstOrDefault(problem => problem.Offset < 0 || problem.Offset > input.Length) is { } wrong)
        {
            throw new InvalidDataException($"A problem has the place {wrong.Offset}.");
        }
    }

    private static byte[] Damaged(byte[] valid, byte[][] others, SeededGenerator generator)
    {
        var bytes = new List<byte>(valid);
        for (var change = 1 + generator.NextInt32(8); change > 0 && bytes.Count > 0; change--)
        {
            var at = generator.NextInt32(bytes.Count);
            switch (generator.NextInt32(8))
            {
                case 0:
                    bytes[at] ^= (byte)(1 << generator.NextInt32(8));
                    break;
                case 1:
                    bytes[at] = Interesting[generator.NextInt32(Interesting.Length)];
                    break;
                case 2:
                    bytes[at] = (byte)generator.NextInt32(256);
                    break;
                case 3:
                    bytes.RemoveRange(at, Math.Min(1 + generator.NextInt32(16), bytes.Count - at));
                    break;
                case 4:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(1 + generator.NextInt32(64), bytes.Count - at)));
                    break;
                case 5 when generator.NextInt32(4) == 0:
                    bytes.RemoveRange(at, bytes.Count - at);
                    break;
                case 6:
                    // A length of four bytes, in either order, of any size.
                    for (var index = at & ~3; index < Math.Min((at & ~3) + 4, bytes.Count); index++)
                    {
                        bytes[index] = generator.NextInt32(2) == 0 ? (byte)0xFF : (byte)generator.NextInt32(256);
                    }

                    break;
                case 7:
                    var other = others[generator.NextInt32(others.Length)];
                    var from = generator.NextInt32(other.Length);
                    bytes.InsertRange(at, other.AsSpan(from, Math.Min(1 + generator.NextInt32(96), other.Length - from)).ToArray());
                    break;
            }
        }

        return [.. bytes];
    }
}
