using Tarry.Studies.Reports;
using Tarry.Studies.Sealing;

namespace Tarry.Studies.Tests.Sealing;

public class ReportTableTests
{
    /// <summary>Two row groups of a table, so that the second is compared too.</summary>
    private const int Count = 140_000;

    private static readonly ReportStream Stream = new() { Device = "usb1.5", Endpoints = [new ReportEndpoint { Number = 0x81, Transport = "usb" }], Fields = [] };

    [Theory]
    [InlineData(null, true)]
    [InlineData("tick", false)]
    [InlineData("bytes", false)]
    [InlineData("fewer", false)]
    [InlineData("more", false)]
    public void Holds_AReportThatDiffers_IsFound(string? change, bool same)
    {
        using var table = new MemoryStream();
        ReportTable.Write(table, Stream, Reports(null));
        table.Position = 0;

        Assert.Equal(same, ReportTable.Holds(table, Stream, Reports(change)));
    }

    private static ReportLog Reports(string? change)
    {
        var reports = new ReportLog();
        var count = Count + (change == "more" ? 1 : change == "fewer" ? -1 : 0);
        for (var index = 0; index < count; index++)
        {
            var last = index == count - 1;
            reports.Add((8L * index) + (last && change == "tick" ? 1 : 0), 0x81, [(byte)index, (byte)(last && change == "bytes" ? 1 : 0)]);
        }

        return reports;
    }
}
