using System.Text.Json;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Tests.HostEvents;

/// <summary>The program on devices that another program makes up.</summary>
public class HostCommandTests
{
    private const string Pad = "/dev/input/event7";
    private const string Raw = "/dev/hidraw3";
    private const long FirstStampUs = 1_700_000_000_009_000;
    private static readonly SessionKey Key = new("reports", "pad");

    [Fact]
    public async Task Devices_OfAMockedPad_AreListedWithButtonsAndAxes()
    {
        using var folder = new TemporaryFolder();
        var said = await new MockedDevices(folder).WithPad(Pad, Circling(1), 0x130, 0x13b).Tarry("host", "devices", "--json");
        var device = Assert.Single(JsonDocument.Parse(said).RootElement.EnumerateArray());
        Assert.Equal(Pad, device.GetProperty("path").GetString());
        Assert.Equal("Quill 2", device.GetProperty("name").GetString());
        Assert.Equal("usb 1209 0001", $"{device.GetProperty("bus")} {device.GetProperty("vendor")} {device.GetProperty("product")}");
        Assert.Equal("BTN_SOUTH BTN_START", string.Join(' ', device.GetProperty("buttons").EnumerateArray()));
        var axis = device.GetProperty("axes")[1];
        Assert.Equal("ABS_Y -32768 32767 16 128", $"{axis.GetProperty("code")} {axis.GetProperty("minimum")} {axis.GetProperty("maximum")} {axis.GetProperty("fuzz")} {axis.GetProperty("flat")}");
        Assert.False(device.GetProperty("is_text_keyboard").GetBoolean());
    }

    [Fact]
    public async Task Watch_OfAMockedPad_CountsMissedAndDoubledSlotsByTheStamps()
    {
        // 60 reports 4 ms apart; then one after 12 ms, of which two slots are missed, one 1 ms later, and one after a second of rest.
        var stamps = Enumerable.Range(0, 60).Select(index => 4000L * index).ToList();
        stamps.AddRange([stamps[^1] + 12_000, stamps[^1] + 13_000, stamps[^1] + 1_013_000]);
        using var folder = new TemporaryFolder();
        var said = await new MockedDevices(folder).WithPad(Pad, At(stamps), 0x130).Tarry("host", "watch", Pad, "--reports", "63", "--seconds", "30", "--json");
        var last = JsonDocument.Parse(said.TrimEnd().Split('\n')[^1]).RootElement;
        long Number(string name) => last.GetProperty(name).GetInt64();
        Assert.Equal((63, 62), (Number("reports"), Number("intervals")));
        Assert.Equal((4000, 1000, 1_000_000), (Number("median_us"), Number("shortest_us"), Number("longest_us")));
        Assert.Equal((2, 1, 1), (Number("missed"), Number("doubled"), Number("pauses")));
        Assert.Equal("kernel, CLOCK_REALTIME", last.GetProperty("clock").GetString());
    }

    [Fact]
    public async Task Record_OfAMockedPad_SealsTimesAndStates()
    {
        using var folder = new TemporaryFolder();
        await Declare(folder);
        await new MockedDevices(folder).WithPad(Pad, Circling(50), 0x130)
            .Tarry("host", "record", "study", "--condition", "pad", "--sitting", "reports", "--device", Pad, "--reports", "50", "--seconds", "30");
        var session = Study.Open(folder["study"]).ReadReports(Key);
        Assert.Equal(50, session.Reports.Count);
        Assert.Equal(["btn_south", "abs_x", "abs_y"], session.Stream.Fields.Select(field => field.Column));
        for (var index = 0; index < 50; index++)
        {
            Assert.Equal(4_000_000L * index, session.Reports.Tick(index));
            var data = session.Reports.Data(index).ToArray();
            Assert.Equal([index % 2, (index * 100) - 2000], session.Stream.Fields.Take(2).Select(field => field.ValueIn(data)!.Value));
        }

        Assert.Equal(1_000_000_000, session.Record.Segments.Single().TickHz);
        Assert.Equal("1209:0001", session.Stream.ProductId);
        Assert.Contains("The study is whole.", await ProgramRun.Done("check", folder["study"]));
    }

    [Fact]
    public async Task Record_OfAMockedKeyboard_IsRefusedAndThenKeepsTheChosenKeyAlone()
    {
        const ushort letter = 30;
        const ushort space = 57;
        using var folder = new TemporaryFolder();
        await Declare(folder);
        (ushort, ushort, int)[] Typed(int index) => index % 2 == 0 ? [(1, letter, 1 - (index / 2 % 2))] : [(1, space, 1 - (index / 2 % 2))];
        var reports = Enumerable.Range(0, 40).Select(index => (FirstStampUs + (8000L * index), Typed(index))).ToList();
        string[] record = ["host", "record", "study", "--condition", "pad", "--sitting", "reports", "--device", Pad, "--seconds", "30"];
        var refused = await Assert.ThrowsAnyAsync<Exception>(() => new MockedDevices(folder).WithPad(Pad, reports, letter, space).Tarry(record));
        Assert.Contains("text keyboard", refused.Message, StringComparison.Ordinal);

        await new MockedDevices(folder).WithPad(Pad, reports, letter, space).Tarry([.. record, "--allow-keyboard", "--code", "KEY_SPACE", "--reports", "20"]);
        var session = Study.Open(folder["study"]).ReadReports(Key);
        Assert.Equal("key_space", Assert.Single(session.Stream.Fields).Column);
        Assert.Equal(20, session.Reports.Count);
        Assert.All(Enumerable.Range(0, 20), index => Assert.Equal(16_000_000L * index, session.Reports.Tick(index)));
    }

    [Fact]
    public async Task Record_OfAMockedRawDevice_ReadsItsFieldsByItsDescriptor()
    {
        // The mouse of HID 1.11, appendix E.10: three buttons, five bits of padding, X and Y of a byte each. One report only: the
        // kernel gives one a read, and umockdev's replay is a stream of bytes without their ends.
        var descriptor = Convert.FromHexString("05010902A1010901A10005091901290315002501950375018102950175058101050109300931158125" + "7F750895028106C0C0");
        using var folder = new TemporaryFolder();
        await Declare(folder);
        await new MockedDevices(folder).WithRaw(Raw, descriptor, [[1, 0xfb, 7]])
            .Tarry("host", "record", "study", "--condition", "pad", "--sitting", "reports", "--device", Raw, "--reports", "1", "--seconds", "30");
        var session = Study.Open(folder["study"]).ReadReports(Key);
        Assert.Equal("Tamarind", session.Stream.Device);
        var x = session.Stream.Fields.Single(field => field.Usages[0] is { Page: 1, First: 0x30 });
        var button = session.Stream.Fields.Single(field => field.Usages[0] is { Page: 9, First: 1 });
        Assert.Equal((-5, 1), (x.ValueIn(session.Reports.Data(0)), button.ValueIn(session.Reports.Data(0))));
        Assert.Contains(session.Record.Events, text => text.Contains("arrival", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Record_OfAProcedureOnAMockedPad_BecomesASessionOfAStick()
    {
        using var folder = new TemporaryFolder();
        await Declare(folder);
        // x goes from -2,000 on in steps of 100, y towards the player from 3,000 on: up is greater in the session, so y falls.
        var reports = Enumerable.Range(0, 50).Select(index => (FirstStampUs + (4000L * index), new (ushort, ushort, int)[] { (3, 0, (index * 100) - 2000), (3, 1, 3000 + index) }));
        await new MockedDevices(folder).WithPad(Pad, reports, 0x130)
            .Tarry("host", "record", "study", "--condition", "pad", "--sitting", "monday", "--device", Pad, "--procedure", "rest", "--reports", "50", "--seconds", "30");

        var study = Study.Open(folder["study"]);
        Assert.Empty(study.ReportSessionKeys);
        var session = study.ReadStick(SessionKey.Parse("monday.pad.rest"));

        Assert.Equal(("host-events", new StickRange(-32768, 32767, 1)), (session.Setup.Source, session.Setup.X));
        Assert.Equal(50, session.Samples.Count);
        Assert.Equal((4_000_000L * 49, 2_900.0, -32768 + 32767 - 3049.0), (session.Samples.Ticks[49], session.Samples.X[49], session.Samples.Y[49]));
        Assert.Contains("The study is whole.", await ProgramRun.Done("check", folder["study"]));
    }

    [Fact]
    public async Task Take_OfASealedRecording_BecomesASessionOfAStick()
    {
        using var folder = new TemporaryFolder();
        await Declare(folder);
        Directory.CreateDirectory(Path.Combine(folder["study"], "recordings"));
        File.WriteAllText(
            Path.Combine(folder["study"], "recordings", "reports.pad.txt"),
            "tarry-host-recording 1 {\"device\":\"Quill 2\",\"transport\":\"host-events\",\"clock\":\"kernel\",\"codes\":[\"3:0\",\"3:1\"]}\n"
            + "5000000 0500000007000000\n7000000 06000000f9ffffff\n9000000 ff0f000000000000\n");
        await ProgramRun.Done("host", "record", folder["study"], "--condition", "pad", "--sitting", "reports", "--recover");

        var unknown = await ProgramRun.Tarry("stick", "take", folder["study"], "reports.pad", "--procedure", "rest");
        Assert.Contains("--x-range", unknown.Error, StringComparison.Ordinal);
        await ProgramRun.Done("stick", "take", folder["study"], "reports.pad", "--procedure", "rest", "--sitting", "monday", "--x-range", "-127..127", "--y-direction", "up");

        var session = Study.Open(folder["study"]).ReadStick(SessionKey.Parse("monday.pad.rest"));
        Assert.Equal([5.0, 6], session.Samples.X.ToArray());
        Assert.Equal([7.0, -7], session.Samples.Y.ToArray());
        Assert.Equal("report 3", Assert.Single(session.Record.Refused).Place);
        Assert.Equal("reports.pad", session.Record.Source!.Options["from_session"]);
        Assert.Single(Study.Open(folder["study"]).ReportSessionKeys);
    }

    [Fact]
    public async Task Record_WithWhatABrokenRecordingLeft_SealsItsWholeLines()
    {
        using var folder = new TemporaryFolder();
        await Declare(folder);
        Directory.CreateDirectory(Path.Combine(folder["study"], "recordings"));
        File.WriteAllText(
            Path.Combine(folder["study"], "recordings", "reports.pad.txt"),
            "tarry-host-recording 1 {\"device\":\"Quill 2\",\"transport\":\"host-events\",\"clock\":\"kernel, CLOCK_MONOTONIC\",\"codes\":[\"1:304\"]}\n"
            + "5000000 01000000\n7000000 00000000\nnonsense\n9000000 01");
        string[] record = ["host", "record", folder["study"], "--condition", "pad", "--sitting", "reports"];
        Assert.Contains("--recover", (await ProgramRun.Tarry([.. record, "--device", Pad])).Error, StringComparison.Ordinal);
        await ProgramRun.Done([.. record, "--recover"]);
        var session = Study.Open(folder["study"]).ReadReports(Key);
        Assert.Equal([0, 2_000_000], new[] { session.Reports.Tick(0), session.Reports.Tick(1) });
        Assert.Equal(2, session.Reports.Count);
        Assert.Equal(["line 4", "line 5"], session.Record.Refused.Select(item => item.Place));
        Assert.Equal(2, (await ProgramRun.Tarry([.. record, "--recover"])).ExitCode);
    }

    [Fact]
    public async Task Watch_OfWhatIsNoDevice_SaysWhatToDo()
    {
        var run = await ProgramRun.Tarry("host", "watch", "/dev/input/event9999");
        Assert.Equal(Output.ExitCode.RigOrDiskFailed, run.ExitCode);
        Assert.Contains("tarry host devices", run.Error, StringComparison.Ordinal);
    }

    private static async Task Declare(TemporaryFolder folder)
    {
        await ProgramRun.Done("new", folder["study"], "--reference", "pad");
        await ProgramRun.Done("condition", folder["study"], "pad");
    }

    private static IEnumerable<(long StampUs, (ushort Type, ushort Code, int Value)[] Events)> Circling(int count) =>
        Enumerable.Range(0, count).Select(index => (FirstStampUs + (4000L * index), new (ushort, ushort, int)[] { (3, 0, (index * 100) - 2000), (1, 0x130, index % 2) }));

    private static IEnumerable<(long StampUs, (ushort Type, ushort Code, int Value)[] Events)> At(IEnumerable<long> stampsUs) =>
        stampsUs.Select((stamp, index) => (FirstStampUs + stamp, new (ushort, ushort, int)[] { (3, 0, index) }));
}
