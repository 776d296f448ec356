namespace Tarry.Studies.Reports;

/// <summary>What the reports of a session are: the key <c>report_stream</c> of <c>session.json</c>.</summary>
public sealed record ReportStream
{
    /// <summary>The device as the capture numbers it, such as <c>usb1.5</c>.</summary>
    public required string Device { get; init; }

    /// <summary>USB vendor and product id as four and four hex digits with a colon; null where the capture does not hold them.</summary>
    public string? ProductId { get; init; }

    /// <summary>Where its reports come from.</summary>
    public required IReadOnlyList<ReportEndpoint> Endpoints { get; init; }

    /// <summary>The fields that are columns of <c>reports.parquet</c>, in order.</summary>
    public IReadOnlyList<ReportField> Fields { get; init; } = [];

    /// <summary>The id of a report; null where it has none, or it is not known.</summary>
    /// <param name="reports">The reports.</param>
    /// <param name="index">Which of them.</param>
    public int? ReportIdOf(ReportLog reports, int index)
    {
        ArgumentNullException.ThrowIfNull(reports);
        return EndpointOf(reports.Endpoint(index)).ReportIdOf(reports.Data(index));
    }

    /// <summary>The value that the column of a field has in a row: null where the report is another one, or has no such value.</summary>
    /// <param name="field">The field.</param>
    /// <param name="reports">The reports.</param>
    /// <param name="index">Which of them.</param>
    public long? ValueOf(ReportField field, ReportLog reports, int index)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(reports);
        return reports.Endpoint(index) == field.Endpoint && ReportIdOf(reports, index) == field.ReportId ? field.ValueIn(reports.Data(index)) : null;
    }

    /// <summary>What is wrong with it, in words; null if nothing is.</summary>
    public string? Broken()
    {
        if (Endpoints.Count == 0)
        {
            return "there is no endpoint";
        }

        if (Endpoints.DistinctBy(endpoint => endpoint.Number).Count() != Endpoints.Count)
        {
            return "an endpoint is there twice";
        }

        var columns = Fields.Select(field => field.Column).Concat(ReportColumns.Fixed).ToList();
        return columns.Distinct(StringComparer.Ordinal).Count() != columns.Count ? "a column is there twice" : null;
    }

    /// <summary>The endpoint of a number.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    internal ReportEndpoint EndpointOf(int number)
    {
        // Once for each report: an enumerator would be made each time.
        for (var index = 0; index < Endpoints.Count; index++)
        {
            if (Endpoints[index].Number == number)
            {
                return Endpoints[index];
            }
        }

        throw new InvalidOperationException($"The stream has no endpoint {number}.");
    }
}
