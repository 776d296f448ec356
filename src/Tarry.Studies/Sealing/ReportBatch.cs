using Tarry.Studies.Reports;

namespace Tarry.Studies.Sealing;

/// <summary>Some reports in a row, looked up once for all columns.</summary>
internal sealed class ReportBatch(ReportStream stream, ReportLog reports)
{
    /// <summary>The most rows.</summary>
    public const int Rows = 4_096;
    private readonly long[] ticks = new long[Rows];
    private readonly int[] endpoints = new int[Rows];
    private readonly int?[] reportIds = new int?[Rows];
    private readonly byte[][] data = new byte[Rows][];
    private readonly long?[] values = new long?[Rows];
    private int count;

    /// <summary>When they came.</summary>
    public ReadOnlySpan<long> Ticks => ticks.AsSpan(0, count);

    /// <summary>Where from.</summary>
    public ReadOnlySpan<int> Endpoints => endpoints.AsSpan(0, count);

    /// <summary>Their ids.</summary>
    public ReadOnlySpan<int?> ReportIds => reportIds.AsSpan(0, count);

    /// <summary>Their bytes.</summary>
    public ReadOnlySpan<byte[]> Data => data.AsSpan(0, count);

    /// <summary>Takes the reports from one on.</summary>
    public void Take(int first, int number)
    {
        count = number;
        for (var row = 0; row < count; row++)
        {
            ticks[row] = reports.Tick(first + row);
            endpoints[row] = reports.Endpoint(first + row);
            data[row] = reports.Data(first + row).ToArray();
            reportIds[row] = stream.EndpointOf(endpoints[row]).ReportIdOf(data[row]);
        }
    }

    /// <summary>The column of a field, until the next is asked for.</summary>
    public ReadOnlySpan<long?> ValuesOf(ReportField field)
    {
        for (var row = 0; row < count; row++)
        {
            values[row] = endpoints[row] == field.Endpoint && reportIds[row] == field.ReportId ? field.ValueIn(data[row]) : null;
        }

        return values.AsSpan(0, count);
    }
}
