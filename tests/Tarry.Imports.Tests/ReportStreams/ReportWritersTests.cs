using ParquetSharp;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.ReportStreams;
using Tarry.Imports.Tests.PacketCapture;
using Tarry.Studies.Reports;

namespace Tarry.Imports.Tests.ReportStreams;

/// <summary>A mouse with the report descriptor of HID 1.11, appendix E.10: the bytes 01 fb 07 are button 1, 5 to the left, 7 down.</summary>
public class ReportWritersTests
{
    [Fact]
    public void Csv_OfAMouse_HasTimesBytesAndFields()
    {
        var session = Mouse([1, 0xFB, 7], [0, 2, 0xFF]);
        using var text = new StringWriter();
        ReportCsvWriter.Write(text, session, TestContext.Current.CancellationToken);
        var lines = text.ToString().Split('\n');

        Assert.Equal("time_us,endpoint,report_id,data,button_1,button_2,button_3,x,y", lines[0]);
        Assert.EndsWith(",129,,01fb07,1,0,0,-5,7", lines[1], StringComparison.Ordinal);
        Assert.EndsWith(",129,,0002ff,0,0,0,2,-1", lines[2], StringComparison.Ordinal);
        Assert.Equal("", lines[3]);
        var hz = session.Record.Segments[0].TickHz;
        Assert.Equal((decimal)(session.Reports.Tick(1) - session.Reports.Tick(0)) / hz * 1_000_000, decimal.Parse(lines[2].Split(',')[0]) - decimal.Parse(lines[1].Split(',')[0]));
    }

    [Fact]
    public void Parquet_OfAMouse_HasTheRowsOfTheCsv()
    {
        var session = Mouse([1, 0xFB, 7], [0, 2, 0xFF]);
        using var text = new StringWriter();
        using var bytes = new MemoryStream();
        ReportCsvWriter.Write(text, session, TestContext.Current.CancellationToken);
        ReportParquetWriter.Write(bytes, session, TestContext.Current.CancellationToken);
        var lines = text.ToString().Split('\n');
        bytes.Position = 0;
        using var file = new ParquetFileReader(bytes);
        Assert.Equal(lines[0].Split(','), Enumerable.Range(0, file.FileMetaData.Schema.NumColumns).Select(column => file.FileMetaData.Schema.Column(column).Name));
        using var rows = file.RowGroup(0);
        Assert.Equal(lines[1..3].Select(line => double.Parse(line.Split(',')[0])), Read<double>(rows, 0));
        Assert.Equal([null, null], Read<int?>(rows, 2));
        Assert.Equal(lines[1..3].Select(line => line.Split(',')[3]), Read<byte[]>(rows, 3).Select(Convert.ToHexStringLower));
        Assert.Equal([-5, 2], Read<long?>(rows, 7));
    }

    private static T[] Read<T>(RowGroupReader rows, int column)
    {
        using var reader = rows.Column(column).LogicalReader<T>();
        return reader.ReadAll((int)rows.MetaData.NumRows);
    }

    private static ReportSession Mouse(params byte[][] reports)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("mouse.pcapng", SampleFiles.PcapNg(220, SampleCaptures.Usb(SampleDescriptors.Mouse, reports)));
        return PacketCaptureImport.Read(path, new PacketCaptureOptions { Condition = "mouse", Sitting = "monday" }, []).ReportSessions[0];
    }
}
