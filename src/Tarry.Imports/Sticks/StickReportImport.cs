using Tarry.Imports.Recordings;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Imports.Sticks;

/// <summary>Takes the positions of a stick from the reports of a device: one a report that holds both axes. See <c>docs/formats/stick.md</c>.</summary>
public static class StickReportImport
{
    private const string NoValue = "a report whose x or y has no value, or one outside its range";

    /// <summary>Says what the positions of a session of reports would add to a study; nothing is written.</summary>
    /// <param name="reports">The reports.</param>
    /// <param name="from">Their session, or null where they come from a file straight away.</param>
    /// <param name="options">The fields, their ranges, and which way y grows.</param>
    /// <param name="target">What they are taken in as; the key names the procedure.</param>
    /// <param name="fileName">The file that holds the reports.</param>
    /// <param name="sha256">Its SHA-256.</param>
    /// <param name="format">Its format.</param>
    /// <remarks>
    /// A report without a value of an axis, or with one outside its range, is refused with its number. A device that tells changes only
    /// (<c>host-events</c>) gives a position a change, so that a stick at rest says nothing at all.
    /// </remarks>
    /// <exception cref="ImportException">There is no such field, the range is not known, or no report holds a position.</exception>
    public static ImportPlan Of(
        ReportSession reports, SessionKey? from, StickReportOptions options, RecordingTarget target, string fileName, string sha256, string format)
    {
        ArgumentNullException.ThrowIfNull(reports);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(target);
        var stream = reports.Stream;
        var axes = StickReportAxes.Of(stream, options, fileName);
        var (x, y, rangeX, rangeY) = axes;
        var (samples, refused, refusedTotal) = Positions(reports, axes, options.Vertical);
        if (samples.Count == 0)
        {
            throw new ImportException($"No report holds a position in {x.Column} and {y.Column}.", fileName, "Name the fields with --x-field and --y-field, and their range with --x-range and --y-range.");
        }

        var changesOnly = stream.Endpoints.Any(endpoint => endpoint.Number == x.Endpoint && endpoint.Transport == "host-events");
        var plan = new StickPlan(target, fileName, sha256, format)
        {
            Setup = new StickSetup
            {
                Procedure = target.Session.Procedure ?? throw new ArgumentException($"{target.Session} names no procedure.", nameof(target)),
                Source = stream.Endpoints.Any(endpoint => endpoint.Number == x.Endpoint && endpoint.Transport.StartsWith("host-", StringComparison.Ordinal))
                    ? StickSetup.FromHostEvents
                    : StickSetup.FromReports,
                X = rangeX with { Step = rangeX.Step ?? 1 },
                Y = rangeY with { Step = rangeY.Step ?? 1 },
                Stimulus = options.Levels.Count > 0 ? StickStimulus.Level : StickStimulus.None,
                StimulusUncertainty = options.Levels.Count > 0 ? options.LevelUncertainty : null,
            },
            TickHz = reports.Record.Segments[0].TickHz,
        };
        plan.Options["device"] = stream.Device;
        plan.Options["x_field"] = x.Column;
        plan.Options["y_field"] = y.Column;
        plan.Options["y_direction"] = options.Vertical == VerticalDirection.Up ? "up" : "down";
        if (from is { } session)
        {
            plan.Options["from_session"] = session.ToString();
        }

        plan.Notes.AddRange(reports.Record.Events);
        if (changesOnly)
        {
            plan.Notes.Add("the host tells changes only: between two positions the stick said the first of them, and at rest it said nothing");
        }

        return plan.Build(options.Levels.Count > 0 ? WithLevels(samples, options.Levels) : samples, samples.Count + refusedTotal, refused, refusedTotal == 0 ? new Dictionary<string, long>() : new() { [NoValue] = refusedTotal }, refusedTotal);
    }

    private static (StickSamples Samples, List<RefusedItem> Refused, long RefusedTotal) Positions(
        ReportSession reports, StickReportAxes axes, VerticalDirection vertical)
    {
        const int longestList = 1_000;
        var (x, y, _, rangeY) = axes;
        var endpoint = reports.Stream.Endpoints.Single(endpoint => endpoint.Number == x.Endpoint);
        var (ticks, atX, atY) = (new List<long>(), new List<double>(), new List<double>());
        var refused = new List<RefusedItem>();
        long refusedTotal = 0;
        for (var index = 0; index < reports.Reports.Count; index++)
        {
            var data = reports.Reports.Data(index);
            if (reports.Reports.Endpoint(index) != x.Endpoint || endpoint.ReportIdOf(data) != x.ReportId)
            {
                continue;
            }

            if (axes.CountsIn(data) is var (valueX, valueY))
            {
                ticks.Add(reports.Reports.Tick(index));
                atX.Add(valueX);
                atY.Add(vertical == VerticalDirection.Up ? valueY : rangeY.Minimum + rangeY.Maximum - valueY);
            }
            else if (refusedTotal++ < longestList)
            {
                refused.Add(new RefusedItem(Invariant($"report {index + 1}"), Invariant($"x is {Word(x.ValueIn(data))}, y is {Word(y.ValueIn(data))}")));
            }
        }

        return (new StickSamples([.. ticks], [.. atX], [.. atY]), refused, refusedTotal);
    }

    private static StickSamples WithLevels(StickSamples samples, IReadOnlyList<LevelChange> levels)
    {
        var stimulus = new double[samples.Count];
        var change = -1;
        for (var index = 0; index < samples.Count; index++)
        {
            while (change + 1 < levels.Count && levels[change + 1].FromTick <= samples.Ticks[index])
            {
                change++;
            }

            stimulus[index] = change < 0 || samples.Ticks[index] <= levels[change].ToTick ? double.NaN : levels[change].Level;
        }

        return new StickSamples(samples.Ticks.ToArray(), samples.X.ToArray(), samples.Y.ToArray(), stimulus, [.. Enumerable.Repeat(double.NaN, samples.Count)]);
    }

    private static string Word(long? value) => value is { } known ? Invariant($"{known}") : "none";
}
