using System.Buffers.Binary;
using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Tarry.Tests.HostEvents;

/// <summary>Input devices that umockdev makes up, for a program that is run below it.</summary>
/// <remarks>
/// Request names and file forms after umockdev's own manual; bits, structures and request lengths after linux/input.h and linux/hidraw.h.
/// Its replay waits whole milliseconds, so stamps can be checked and delays cannot.
/// </remarks>
internal sealed class MockedDevices(TemporaryFolder folder)
{
    private readonly List<string> arguments = [];

    /// <summary>A pad with two buttons and two axes that tells of these events, a report a step.</summary>
    public MockedDevices WithPad(string node, IEnumerable<(long StampUs, (ushort Type, ushort Code, int Value)[] Events)> reports, params int[] buttons)
    {
        Add(node, "input", "13:71",
            $"EVIOCGID 0 {Hex(Words(3, 0x1209, 1, 0x111))}",
            $"EVIOCGNAME 8 {Hex([.. "Quill 2"u8, .. new byte[249]])}",
            $"EVIOCGBIT(1) 96 {Hex(Bits(96, buttons))}",
            $"EVIOCGBIT(3) 8 {Hex(Bits(8, 0, 1))}",
            $"EVIOCGABS(0) 0 {Hex(Numbers(5, -32768, 32767, 16, 128, 0))}",
            $"EVIOCGABS(1) 0 {Hex(Numbers(-7, -32768, 32767, 16, 128, 0))}",
            $"EVIOCGKEY 96 {Hex(Bits(96, buttons[0]))}");
        return WithScript(node, 1, reports.Select(report =>
            report.Events.Append(((ushort)0, (ushort)0, 0)).SelectMany(change => Event(report.StampUs, change)).ToArray()));
    }

    /// <summary>A raw HID device with a descriptor that sends these reports.</summary>
    public MockedDevices WithRaw(string node, byte[] descriptor, IEnumerable<byte[]> reports)
    {
        Add(node, "hidraw", "240:0",
            $"HIDIOCGRDESCSIZE 0 {Hex(Numbers(descriptor.Length))}",
            $"HIDIOCGRDESC 0 {Hex([.. Numbers(descriptor.Length), .. descriptor, .. new byte[4096 - descriptor.Length]])}",
            $"HIDIOCGRAWINFO 0 {Hex([.. Numbers(3), .. Words(0x1209, 2)])}",
            $"HIDIOCGRAWNAME 9 {Hex([.. "Tamarind"u8, .. new byte[248]])}");
        return WithScript(node, 40, reports);
    }

    /// <summary>Runs the program below umockdev, and returns what it said when it ended with 0.</summary>
    public async Task<string> Tarry(params string[] commandLine)
    {
        var umockdev = Requirement.Program("umockdev-run", "umockdev");
        var start = new ProcessStartInfo(umockdev, [.. arguments, "--", "dotnet", Path.Combine(AppContext.BaseDirectory, "tarry.dll"), .. commandLine])
        {
            WorkingDirectory = folder.Path,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };

        // With its diagnostics the runtime waits for ever below this preload.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{string.Join(' ', commandLine)} gave {process.ExitCode}\n{output}\n{await error}");
        return output;
    }

    private void Add(string node, string subsystem, string number, params string[] requests)
    {
        var name = Path.GetFileName(node);
        var device = folder.Write(name + ".umockdev", $"""
            P: /devices/virtual/{subsystem}/{name}
            N: {node["/dev/".Length..]}
            E: DEVNAME={node}
            E: SUBSYSTEM={subsystem}
            A: dev={number}


            """.ReplaceLineEndings("\n"));
        var ioctl = folder.Write(name + ".ioctl", $"@DEV {node}\n{string.Join('\n', requests)}\n");
        arguments.AddRange(["-d", device, "-i", $"{node}={ioctl}"]);
    }

    private MockedDevices WithScript(string node, int delayMs, IEnumerable<byte[]> reads)
    {
        var script = Path.Combine(folder.Path, Path.GetFileName(node) + ".script");
        using (var stream = File.Create(script))
        {
            foreach (var bytes in reads)
            {
                stream.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"r {delayMs} ")));
                foreach (var value in bytes)
                {
                    stream.Write(value < 32 ? [(byte)'^', (byte)(value + 64)] : value == '^' ? [(byte)'^', (byte)'`'] : [value]);
                }

                stream.WriteByte((byte)'\n');
            }
        }

        arguments.AddRange(["-s", $"{node}={script}"]);
        return this;
    }

    private static byte[] Event(long stampUs, (ushort Type, ushort Code, int Value) change)
    {
        var bytes = new byte[24];
        BinaryPrimitives.WriteInt64LittleEndian(bytes, stampUs / 1_000_000);
        BinaryPrimitives.WriteInt64LittleEndian(bytes.AsSpan(8), stampUs % 1_000_000);
        BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(16), change.Type);
        BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(18), change.Code);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(20), change.Value);
        return bytes;
    }

    private static byte[] Bits(int length, params int[] set)
    {
        var bytes = new byte[length];
        foreach (var bit in set)
        {
            bytes[bit / 8] |= (byte)(1 << (bit % 8));
        }

        return bytes;
    }

    private static byte[] Words(params int[] words) => [.. words.SelectMany(word => BitConverter.GetBytes((ushort)word))];

    private static byte[] Numbers(params int[] numbers) => [.. numbers.SelectMany(BitConverter.GetBytes)];

    private static string Hex(byte[] bytes) => Convert.ToHexString(bytes);
}
