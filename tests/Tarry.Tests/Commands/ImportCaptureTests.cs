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
    public async Task Export_OfASessionOfReports_GivesItsTableItsRecordAndItsSchema()
    {
        using var folder = new TemporaryFolder();
        var (study, capture) = (folder["study"], folder["pad.pcap"]);
        await File.WriteAllBytesAsync(capture, Capture(reports: 20, slotUs: 4_000), TestContext.Current.CancellationToken);
        await ProgramRun.Done("new", study);
        await ProgramRun.Done("import", study, capture, "--condition", "quill-usb", "--sitting", "monday");

        var toTerminal = await ProgramRun.Tarry("export", study);
        Assert.Contains("1 session of reports", toTerminal.Error, StringComparison.Ordinal);
        await ProgramRun.Done("export", study, "--out", folder["csv"]);
        await ProgramRun.Done("export", study, "--format", "parquet", "--out", folder["parquet"]);
        await ProgramRun.Done("export", study, "--format", "datapackage", "--out", folder["package"]);

        // The bytes are those of Capture below: a counter and two zeros, each 4 ms.
        var lines = await File.ReadAllLinesAsync(folder[Path.Combine("csv", "reports", "monday.quill-usb.csv")], TestContext.Current.CancellationToken);
        Assert.Equal("time_us,endpoint,report_id,data", lines[0]);
        Assert.Equal(Enumerable.Range(0, 20).Select(index => FormattableString.Invariant($"{4_000 * index},129,,{index:x2}0000")), lines[1..]);
        foreach (var name in new[] { "csv/reports/monday.quill-usb.json", "parquet/reports/monday.quill-usb.json", "package/reports/monday.quill-usb.json" })
        {
            Assert.Equal(
                await File.ReadAllBytesAsync(Path.Combine(study, "sessions", "monday.quill-usb", "session.json"), TestContext.Current.CancellationToken),
                await File.ReadAllBytesAsync(folder[name], TestContext.Current.CancellationToken));
        }

        Assert.True(File.Exists(folder["parquet/reports/monday.quill-usb.parquet"]));
        var descriptor = JsonNode.Parse(await File.ReadAllTextAsync(folder["package/datapackage.json"], TestContext.Current.CancellationToken))!;
        var table = descriptor["resources"]!.AsArray().Single(resource => (string)resource!["path"]! == "reports/monday.quill-usb.csv")!;
        Assert.Equal(["time_us", "endpoint", "report_id", "data"], table["schema"]!["fields"]!.AsArray().Select(field => (string)field!["name"]!));
        Assert.Contains("pad.pcap", (string)descriptor["sources"]![0]!["title"]!, StringComparison.Ordinal);
        var (node, tests) = (Requirement.Program("node", "nodejs"), Path.Combine(Repository.Root, "tests", "Tarry.Tests"));
        Requirement.Needs(Directory.Exists(Path.Combine(tests, "node_modules", "datapackage")), "the npm package datapackage: run npm ci in tests/Tarry.Tests");
        var read = await OtherProgram.Done(node, folder["package"], Path.Combine(AppContext.BaseDirectory, "DataPackage", "read-package.js"), tests, folder["package/datapackage.json"]);
        Assert.Contains("reports/monday.quill-usb.csv 20", read, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_OfImport_GroupsTheOptionsByWhatTheyAreFor()
    {
        var help = (await ProgramRun.Tarry("import", "--help")).Out;
        string[] order = ["Any file", "--condition CONDITION", "Long-form CSV", "--latency-column COLUMN", "Sound (WAV)", "--response-signal SIGNAL", "[default: light]", "Packet captures", "--usb-speed SPEED"];
        Assert.Equal(order.Select(text => help.IndexOf(text, StringComparison.Ordinal)).Order(), order.Select(text => help.IndexOf(text, StringComparison.Ordinal)));
        Assert.All(order, text => Assert.Contains(text, help, StringComparison.Ordinal));
        Assert.All(help.Split('\n').Where(line => !line.StartsWith("Examples", StringComparison.Ordinal) && !line.StartsWith("          tarry", StringComparison.Ordinal)), line => Assert.InRange(line.Length, 0, 100));
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
