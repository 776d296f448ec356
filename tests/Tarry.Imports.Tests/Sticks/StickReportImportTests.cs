using Tarry.Imports.HidReports;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Imports.Tests.Sticks;

public sealed class StickReportImportTests
{
    // A game pad with report id 3: two sticks of 12 bits a field (X, Y, Z, Rz, logical 0..4095) and eight buttons, written after the items of
    // HID 1.11, section 6.2.2.
    private const string Pad = "0501" + "0905" + "A101" + "8503"
        + "0930" + "0931" + "0932" + "0935" + "1500" + "26FF0F" + "750C" + "9504" + "8102"
        + "0509" + "1901" + "2908" + "2501" + "7501" + "9508" + "8102" + "C0";

    [Fact]
    public void Reports_OfTheLeftStick_AreTakenByTheirUsageWithUpGreater()
    {
        // x = 0x123, y = 0x456; then x = 4095, y = 0; the first in 3 bytes, low bits first.
        var plan = Of(Session([3, 0x23, 0x61, 0x45, 0, 0, 0, 0], [3, 0xff, 0x0f, 0x00, 0, 0, 0, 0]));
        var session = Assert.Single(plan.StickSessions);

        Assert.Equal([0x123, 4_095.0], session.Samples.X.ToArray());
        Assert.Equal([4_095 - 0x456, 4_095.0], session.Samples.Y.ToArray());
        Assert.Equal([0L, 8_000], session.Samples.Ticks.ToArray());
        Assert.Equal(("reports", new StickRange(0, 4_095, 1)), (session.Setup.Source, session.Setup.X));
        Assert.Equal("monday-capture.quill-usb", session.Record.Source!.Options["from_session"]);
    }

    [Fact]
    public void Reports_OfTheRightStick_AreTakenByTheNamesOfItsFields()
    {
        var session = Of(Session([3, 0, 0, 0, 0x23, 0x61, 0x45, 0]), new StickReportOptions { XField = "z", YField = "rz", Vertical = VerticalDirection.Up }).StickSessions.Single();

        Assert.Equal((0x123, 0x456), (session.Samples.X[0], session.Samples.Y[0]));
    }

    [Fact]
    public void Reports_OfAnotherIdOrTooShort_AreLeftAsideOrRefused()
    {
        var plan = Of(Session([9, 1, 2, 3], [3, 0x23], [3, 0, 0, 0, 0, 0, 0, 0]));

        Assert.Equal((2, 1, 1), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal));
        Assert.Equal("report 2", Assert.Single(plan.Record.Refused).Place);
    }

    [Fact]
    public void Reports_WithoutSuchAFieldOrRange_AreRefusedWithARemedy()
    {
        var session = Session([3, 0, 0, 0, 0, 0, 0, 0]);
        var wide = session.Stream.Fields.Select(field => field with { LogicalMinimum = int.MinValue, LogicalMaximum = int.MaxValue });

        Assert.Contains("x, y, z, rz", Assert.Throws<ImportException>(() => Of(session, new StickReportOptions { XField = "wheel" })).Remedy, StringComparison.Ordinal);
        Assert.Contains("--x-range", Assert.Throws<ImportException>(() => Of(WithFields(session, [.. wide]))).Remedy, StringComparison.Ordinal);
        Assert.Contains("--report-descriptor", Assert.Throws<ImportException>(() => Of(WithFields(session, []))).Remedy, StringComparison.Ordinal);
        Assert.Contains("No report holds a position", Assert.Throws<ImportException>(() => Of(Session([9, 0]))).Message, StringComparison.Ordinal);
    }

    private static ImportPlan Of(ReportSession session, StickReportOptions? options = null) => StickReportImport.Of(
        session,
        session.Record.Key,
        options ?? new StickReportOptions(),
        new RecordingTarget(new SessionKey("monday", "quill-usb", StickProcedure.Rest), []),
        "reports.parquet",
        new string('0', 64),
        "pcapng");

    private static ReportSession WithFields(ReportSession session, IReadOnlyList<ReportField> fields) =>
        session with { Record = session.Record with { ReportStream = session.Stream with { Fields = fields } } };

    private static ReportSession Session(params byte[][] reports)
    {
        var log = new ReportLog();
        foreach (var report in reports)
        {
            log.Add(8_000L * log.Count, 0x81, report);
        }

        return new ReportSession(
            new SessionRecord
            {
                Key = new SessionKey("monday-capture", "quill-usb"),
                Segments = [new Segment(null, 1, 1_000_000, null)],
                ReportStream = new ReportStream
                {
                    Device = "usb1.5",
                    Endpoints = [new ReportEndpoint { Number = 0x81, Transport = "usb", ReportIdIsFirstByte = true }],
                    Fields = HidReportFields.Of(HidReportDescriptor.Parse(Convert.FromHexString(Pad)), 0x81, idInBytes: true).Fields,
                },
            },
            log);
    }
}
