using System.Globalization;
using System.Text.RegularExpressions;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.PacketCapture.Usb;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.PacketCapture;

public class PacketCaptureImportTests
{
    private static readonly PacketCaptureOptions Options = new() { Condition = "quill-usb", Sitting = "monday" };

    // USB 2.0, table 9-13: frames of 1 ms at low and full speed, 2^(bInterval - 1) microframes of 125 us at high speed.
    [Theory]
    [InlineData(UsbSpeed.LowOrFull, 1, 1_000L)]
    [InlineData(UsbSpeed.LowOrFull, 10, 10_000L)]
    [InlineData(UsbSpeed.LowOrFull, 255, 255_000L)]
    [InlineData(UsbSpeed.LowOrFull, 0, null)]
    [InlineData(UsbSpeed.High, 1, 125L)]
    [InlineData(UsbSpeed.High, 4, 1_000L)]
    [InlineData(UsbSpeed.High, 6, 4_000L)]
    [InlineData(UsbSpeed.High, 7, 8_000L)]
    [InlineData(UsbSpeed.High, 10, 64_000L)]
    [InlineData(UsbSpeed.High, 16, 4_096_000L)]
    [InlineData(UsbSpeed.High, 17, null)]
    [InlineData(UsbSpeed.Unknown, 4, null)]
    public void IntervalUs_OfTable913_IsByItsSpeed(UsbSpeed speed, int bInterval, long? microseconds) =>
        Assert.Equal(microseconds, UsbPolling.IntervalUs(speed, bInterval));

    [Theory]
    [InlineData(8, 64, 8, 10, "low-or-full", 10_000L)]
    [InlineData(64, 64, 8, 4, "high", 1_000L)]
    [InlineData(64, 512, 0, 1, "high", 125L)]
    [InlineData(64, 64, 8, 8, "low-or-full", 8_000L)]
    [InlineData(64, 64, 1, 1, null, null)]
    public void Read_DeclaredInterval_IsKnownWhereTheSpeedIs(int controlPacket, int maxPacket, int driverInterval, int interval, string? speed, long? declaredUs)
    {
        var plan = Read(SampleFiles.PcapNg(220, SampleCaptures.Usb(
            SampleDescriptors.Mouse, SampleCaptures.Reports(1, 5, 3), interval: interval, controlPacket: controlPacket, maxPacket: maxPacket, driverInterval: driverInterval)), Options);

        var endpoint = Assert.Single(Assert.Single(plan.ReportSessions).Stream.Endpoints);
        Assert.Equal((interval, speed, declaredUs), (endpoint.BInterval, endpoint.Speed, endpoint.DeclaredIntervalUs));
    }

    [Fact]
    public void Read_CaptureOfAPad_GivesItsReportsWithSourceAndFields()
    {
        var file = SampleFiles.PcapNg(220, SampleCaptures.Usb(SampleDescriptors.Gamepad, SampleCaptures.Reports(1, 40, 11, 1), maxPacket: 16, slot: 8_000_125));
        var plan = Read(file, Options);

        var session = Assert.Single(plan.ReportSessions);
        Assert.Empty(plan.Sessions);
        Assert.Equal((40, 1_000_000_000L, "usb3.5", "1209:0105"), (session.Reports.Count, session.Record.Segments[0].TickHz, session.Stream.Device, session.Stream.ProductId));
        Assert.Equal(8_000_125, session.Reports.Tick(1) - session.Reports.Tick(0));
        Assert.Equal(100_000_000, session.Reports.Tick(0));
        Assert.Equal(17, session.Stream.Fields.Count);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(file)), session.Record.Source!.Sha256);
        Assert.Equal(("2023-11-14T22:13:20.0000000+00:00", "quill-usb"), (session.Record.Source.Options["first_packet_utc"], Assert.Single(plan.NewConditions).Id));
    }

    [Fact]
    public void Read_CaptureWithoutDescriptor_KeepsBytesOrTakesTheGivenOne()
    {
        using var folder = new TemporaryFolder();
        var packets = SampleCaptures.Usb(SampleDescriptors.Mouse, [[1, 0xFB, 7], [0, 2, 0xFF]]).Where(packet => packet.Data[9] == 1);
        var path = folder.Write("late.pcapng", SampleFiles.PcapNg(220, packets));
        var descriptor = folder.Write("mouse.hex", Convert.ToHexString(SampleDescriptors.Mouse));

        var bare = PacketCaptureImport.Read(path, Options, [], null, TestContext.Current.CancellationToken);
        var given = PacketCaptureImport.Read(path, Options with { ReportDescriptorFile = descriptor }, [], null, TestContext.Current.CancellationToken);

        Assert.Empty(bare.ReportSessions[0].Stream.Fields);
        Assert.Contains(bare.Notes, note => note.Contains("--report-descriptor", StringComparison.Ordinal));
        var session = given.ReportSessions[0];
        Assert.Equal([1, 0, 0, -5, 7], session.Stream.Fields.Select(field => field.ValueIn(session.Reports.Data(0))));
    }

    [Fact]
    public void Read_CutFile_KeepsWhatCameBeforeAndNamesTheByte()
    {
        var whole = SampleFiles.PcapNg(220, SampleCaptures.Usb(SampleDescriptors.Mouse, SampleCaptures.Reports(1, 40, 3)));
        var plan = Read(whole[..^30], Options);

        Assert.Equal(39, plan.ReportSessions[0].Reports.Count);
        Assert.Equal((40, 39, 1), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal));
        Assert.Equal("cut off", Assert.Single(plan.Record.RefusedByReason).Key);
        Assert.Matches(@"^capture byte [0-9]+$", Assert.Single(plan.Record.Refused).Place);
    }

    [Fact]
    public void Read_NothingOfUse_SaysWhatIsThere()
    {
        var ethernet = Assert.Throws<ImportException>(() => Read(SampleFiles.Pcap(1, [new(SampleCaptures.Start, new byte[60])]), Options));
        Assert.Contains("link types that are not read: 1", ethernet.Problem, StringComparison.Ordinal);

        var two = SampleFiles.PcapNg(220, SampleCaptures.Usb(SampleDescriptors.Mouse, [[1, 2, 3]], device: 4).Concat(SampleCaptures.Usb(SampleDescriptors.Mouse, [[1, 2, 3]], device: 9)));
        Assert.Contains("usb3.4 (1 reports), usb3.9 (1 reports)", Assert.Throws<ImportException>(() => Read(two, Options)).Problem, StringComparison.Ordinal);
        Assert.Equal("usb3.9", Read(two, Options with { Device = "usb3.9" }).ReportSessions[0].Stream.Device);
        Assert.Throws<ImportException>(() => Read(two, Options with { Device = "usb9.9" }));
        Assert.Throws<ImportException>(() => Read("no capture at all"u8.ToArray(), Options));
        Assert.Throws<ImportException>(() => Read(two, Options with { Device = "usb3.9", Sitting = null }));
    }

    [Fact]
    public void Read_MarkedPresses_GivesLatenciesAndCountsMisses()
    {
        // The marker's button goes down every 50 ms; the mouse answers 3.25 ms later, but for the third press; a late release is no answer.
        var packets = new List<SamplePacket>();
        packets.AddRange(SampleCaptures.Usb(SampleDescriptors.Mouse, [], device: 7));
        packets.AddRange(SampleCaptures.Usb(SampleDescriptors.Mouse, [], device: 8));
        for (var press = 0; press < 6; press++)
        {
            var at = SampleCaptures.Start + 1_000_000_000 + (press * 50_000_000L);
            packets.Add(Report(7, at, 1));
            packets.Add(Report(7, at + 20_000_000, 0));
            if (press != 2)
            {
                packets.Add(Report(8, at + 1_000_000, 0));
                packets.Add(Report(8, at + 3_250_000 + (press * 1_000), 1));
                packets.Add(Report(8, at + 22_000_000, 0));
            }
        }

        var plan = Read(SampleFiles.PcapNg(220, packets), Options with { Marker = "usb3.7:button_1", Button = "button_1" });

        Assert.Empty(plan.ReportSessions);
        var (record, trials) = Assert.Single(plan.Sessions);
        Assert.Equal(1_000_000, record.Segments[0].TickHz);
        Assert.Equal([3_250, 3_251, null, 3_253, 3_254, 3_255], trials.Select(trial => trial.LatencyTicks));
        Assert.Equal(Outcome.Missed, trials[2].Outcome);
        Assert.Equal(1_050_000, trials[1].PressTicks);
        Assert.All(trials, trial => Assert.Equal(TrialFlags.None, trial.Flags));

        var slow = Read(SampleFiles.PcapNg(220, packets), Options with { Marker = "usb3.7:button_1", Button = "button_1", TimeOutMs = 3.2525 });
        Assert.Equal(2, slow.Sessions[0].Trials.Count(trial => trial.Outcome == Outcome.Response));
        Assert.Throws<ImportException>(() => Read(SampleFiles.PcapNg(220, packets), Options with { Marker = "usb3.7:button_9" }));
    }

    [Fact]
    public void Read_PressesOfARig_SayHowLatenciesDifferAndNoMore()
    {
        var (packets, presses) = Rig();
        var plan = Read(SampleFiles.PcapNg(220, packets), Options with { Button = "button_1", Presses = presses });

        Assert.Empty(plan.Sessions);
        Assert.Equal(packets.Count(packet => packet.Data[8] == 'C' && packet.Data[9] == 1), plan.ReportSessions[0].Reports.Count);
        var events = plan.ReportSessions[0].Record.Events;
        Assert.Contains(events, what => what.StartsWith("200 of 200 presses of rig", StringComparison.Ordinal));
        // Uniform over 8 ms: 8 / sqrt(12) = 2.309 ms, within five standard errors of 5 %.
        var spoken = Assert.Single(events, what => what.Contains("standard deviation", StringComparison.Ordinal));
        Assert.InRange(double.Parse(Regex.Match(spoken, @"standard deviation of ([0-9.]+) ms").Groups[1].Value, CultureInfo.InvariantCulture), 1.9, 2.75);
        Assert.Contains("is not known", spoken, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_PressesOfARigWithAStatedOffset_GivesLatencies()
    {
        var (packets, presses) = Rig();
        var bytes = SampleFiles.PcapNg(220, packets);
        var plan = Read(bytes, Options with { Button = "button_1", Presses = presses, ClockOffsetMs = 500, ClockRatePpm = 40, TimeOutMs = 50 });

        Assert.Empty(plan.ReportSessions);
        var (record, trials) = Assert.Single(plan.Sessions);
        Assert.All(trials, trial => Assert.InRange(trial.LatencyTicks!.Value, 3_999_000, 12_001_000));
        Assert.InRange(trials.Count, 198, 200);
        Assert.Contains(record.Events, what => what.Contains("as stated (500 ms, 40 ppm)", StringComparison.Ordinal));

        var early = Assert.Throws<ImportException>(() => Read(bytes, Options with { Button = "button_1", Presses = presses, ClockOffsetMs = 530, ClockRatePpm = 40 }));
        Assert.Contains("before their presses", early.Problem, StringComparison.Ordinal);
    }

    // Presses of a rig whose clock is 0 at 500 ms of the capture, which runs 40 ppm faster; answers 4 to 12 ms later.
    private static (List<SamplePacket> Packets, RigPresses Presses) Rig()
    {
        var generator = new Tarry.Metrology.SeededGenerator(8);
        var packets = new List<SamplePacket>(SampleCaptures.Usb(SampleDescriptors.Mouse, [], device: 8));
        var presses = new List<double>();
        for (var (index, time) = (0, 1.0); index < 200; index++)
        {
            presses.Add(time);
            var at = SampleCaptures.Start + (long)(1e9 * (0.5 + (time * (1 + 40e-6)) + 0.004 + (0.008 * generator.NextDouble())));
            packets.Add(Report(8, at, 1));
            packets.Add(Report(8, at + 20_000_000, 0));
            time += 0.08 + (0.05 * generator.NextDouble());
        }

        return (packets, new RigPresses("rig", presses));
    }

    private static SamplePacket Report(int device, long at, byte buttons) =>
        new(at, SamplePackets.UsbMon('C', 1, 0x81, device, 3, (ulong)at, [buttons, 0, 0]));

    private static ImportPlan Read(byte[] file, PacketCaptureOptions options)
    {
        using var folder = new TemporaryFolder();
        return PacketCaptureImport.Read(folder.Write("capture", file), options, []);
    }
}
