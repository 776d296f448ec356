using Tarry.Findings;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Reports.Figures;
using Tarry.Reports.Merits;
using Tarry.Reports.Wording;

namespace Tarry.Web.Standing;

/// <summary>The standing as an address asks for it.</summary>
public sealed record StandingTable
{
    private const int Steps = 6;

    /// <summary>What was asked for.</summary>
    public required StandingQuery Query { get; init; }

    /// <summary>Factors of which there is more than one level, with their levels.</summary>
    public required IReadOnlyList<(string Factor, IReadOnlyList<string> Levels)> Choices { get; init; }

    /// <summary>The rows, in order.</summary>
    public required IReadOnlyList<StandingRow> Rows { get; init; }

    /// <summary>How many conditions there are in all.</summary>
    public required int Of { get; init; }

    /// <summary>The axis of the strips.</summary>
    public required StripAxis Axis { get; init; }

    /// <summary>What the order says and what it does not.</summary>
    public required string Note { get; init; }

    /// <summary>Makes it.</summary>
    public static StandingTable Make(FindingsDocument document, StandingQuery query)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(query);
        var shown = RankedRow.Of(document)
            .Where(row => query.Levels.All(level => row.Condition.Factors.GetValueOrDefault(level.Key) == level.Value))
            .Select(row => (Row: row, Value: query.Sort.Of(row.Condition)))
            .ToList();
        var sorted = query.Sort == FiguresOfMerit.Mean && !query.GreatestFirst ? shown
            : [.. shown.Where(row => row.Value.Value is not null).OrderBy(row => query.GreatestFirst ? -row.Value.Value : row.Value.Value), .. shown.Where(row => row.Value.Value is null)];
        var spans = query.Sort.IsLatency ? shown.Select(row => Span(row.Row)).OfType<(double Low, double High)>().ToList() : [];
        var axis = StripAxis.Cover([.. shown.Select(row => row.Value)], spans, Steps);
        var reference = document.Conditions.FirstOrDefault(condition => condition.IsReference);
        var referenceAt = reference is null ? null : query.Sort.Of(reference).Value;
        var groups = sorted.GroupBy(row => row.Row.Rank?.Group ?? 0).Where(group => group.Key > 0).ToDictionary(group => group.Key, group => group.Count());
        List<StandingRow> rows = [.. sorted.Select((entry, index) => new StandingRow(
            entry.Row,
            entry.Value,
            [.. query.Columns.Select(column => column.Of(entry.Row.Condition))],
            index > 0 && entry.Value.Overlaps(sorted[index - 1].Value),
            groups.GetValueOrDefault(entry.Row.Rank?.Group ?? 0) > 1,
            IntervalStrip.Draw(axis, entry.Value, query.Sort.IsLatency ? Span(entry.Row) : null, entry.Row.Condition.IsReference, referenceAt),
            [.. entry.Row.Condition.Cautions.Select(caution => CautionWording.Key(caution.Kind).Replace('-', ' ')).Distinct()]))];
        return new StandingTable
        {
            Query = query,
            Choices = Factors(document),
            Rows = rows,
            Of = document.Conditions.Count,
            Axis = axis,
            Note = Words(query, rows),
        };
    }

    private static (double Low, double High)? Span(RankedRow row) => row.Condition is { P05: Estimate<Latency> low, P95: Estimate<Latency> high }
        ? (low.Value.Milliseconds, high.Value.Milliseconds)
        : null;

    private static List<(string Factor, IReadOnlyList<string> Levels)> Factors(FindingsDocument document) =>
    [
        .. document.Conditions.SelectMany(condition => condition.Factors.Keys).Distinct()
            .Select(factor => (factor, Levels: (IReadOnlyList<string>)[.. document.Conditions.Select(condition => condition.Factors.GetValueOrDefault(factor, "")).Where(level => level.Length > 0).Distinct()]))
            .Where(factor => factor.Levels.Count > 1),
    ];

    private static string Words(StandingQuery query, List<StandingRow> rows)
    {
        if (query.Sort == FiguresOfMerit.Mean)
        {
            return rows.Any(row => row.IsTied)
                ? "Sorted by mean. Conditions joined by a bar at the left are a tie group: its members are not told from its first."
                : "Sorted by mean.";
        }

        var order = query.GreatestFirst ? "greatest first" : "least first";
        var overlapping = rows.Count(row => row.OverlapsAbove && row.Sorted.Value is not null);
        return $"Sorted by {query.Sort.Name}, {order}. Ranks and tie groups belong to the mean, not to this order: "
            + (overlapping == 0
                ? "no interval here overlaps with that of its neighbour above."
                : $"{Numbers.Count(overlapping, "interval")} here {(overlapping == 1 ? "overlaps" : "overlap")} with that of the neighbour above, so that the order of the two is open.");
    }
}
