using System.Buffers.Binary;
using System.Text.Json.Nodes;
using Tarry.Output;

namespace Tarry.Tests.Commands;

/// <summary>A packet capture through the whole program: imported, checked, analysed.</summary>
public class ImportCaptureTests
{
    [Fact]
    public async Task Import_UsbCapture_BecomesAReportStreamThatChecksAndIsAnalysed()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        var capture = folder["pad.pcap"];
        await File.WriteAllBytesAsync(capture, Capture(reports: 200, slotUs: 4_000), TestContext.Current.CancellationToken);
        await ProgramRun.Done("new", study);

        var dry = await ProgramRun.Done("import", study, capture, "--condition", "quill-usb", "--sitting", "monday", "--dry-run");
        Assert.Contains("would keep 200 of 200 reports in 1 session", dry, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(study, "sessions")));
        await ProgramRun.Done("import", study, capture, "--condition", "quill-usb", "--sitting", "monday");

        Assert.Contains("monday.quill-usb: 200 reports", await ProgramRun.Done("check", study), StringComparison.Ordinal);
        var words = await ProgramRun.Done("analyse", study);
        Assert.Contains("200 reports, one every 4.000 ms (95 % interval 4.000 to 4.000); 199 slots in a row filled, 0 missed", words, StringComparison.Ordinal);
        var text = await ProgramRun.Done("analyse", study, "--json");
        var stream = JsonNode.Parse(text)!["report_streams"]![0]!;
        Assert.Equal(4.0, (double)stream["interval_ms"]!["value"]!);
        Assert.Equal(199, (int)stream["slots"]!["filled"]!);
        Assert.Equal(199, stream["histogram"]!["counts"]!.AsArray().Sum(count => (int)count!));
        Assert.Empty(JsonNode.Parse(text)!["conditions"]!.AsArray());

        var again = await ProgramRun.Tarry("import", study, capture, "--condition", "quill-usb", "--sitting", "monday");
        Assert.Equal(ExitCode.WrongUse, again.ExitCode);
        Assert.Contains("has monday.quill-usb already", again.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Explain_CaptureAndDescriptor_NeedNoStudy()
    {
        using var folder = new TemporaryFolder();
        await File.WriteAllBytesAsync(folder["pad.pcap"], Capture(3, 4_000), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(folder["mouse.txt"], "05 01 09 02 A1 01 05 09 19 01 29 03 15 00 25 01 95 03 75 01 81 02 C0", TestContext.Current.CancellationToken);

        Assert.Contains("usb1.5: 3 reports", await ProgramRun.Done("import", "--explain", folder["pad.pcap"]), StringComparison.Ordinal);
        Assert.Contains("input, bit 0: 3 x 1 bit, button_1 to button_3, 0 to 1", await ProgramRun.Done("import", "--explain", folder["mouse.txt"]), StringComparison.Ordinal);
        var missing = await ProgramRun.Tarry("import", folder["pad.pcap"]);
        Assert.Equal(ExitCode.WrongUse, missing.ExitCode);
        Assert.Contains("FILE", missing.Error, StringComparison.Ordinal);
    }

    /// <summary>Completions of interrupt transfers under usbmon's 64-byte header, in a little-endian pcap.</summary>
    private static byte[] Capture(int reports, int slotUs)
    {
        using var file = new MemoryStream();
        file.Write(Convert.FromHexString("d4c3b2a1020004000000000000000000ffff0000dc000000"));
        for (var index = 0; index < reports; index++)
        {
            var record = new byte[16 + 64 + 3];
            var microseconds = index * (long)slotUs;
            BinaryPrimitives.WriteUInt32LittleEndian(record, (uint)(1_700_000_000 + (microseconds / 1_000_000)));
            BinaryPrimitives.WriteUInt32LittleEndian(record.AsSpan(4), (uint)(microseconds % 1_000_000));
            record[8] = record[12] = 67;
            var packet = record.AsSpan(16);
            packet[8] = (byte)'C';
            packet[9] = 1;
            packet[10] = 0x81;
            packet[11] = 5;
            packet[12] = 1;
            packet[14] = (byte)'-';
            packet[32] = packet[36] = 3;
            packet[64] = (byte)index;
            file.Write(record);
        }

        return file.ToArray();
    }
}
