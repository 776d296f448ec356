using Tarry.Imports.Recordings;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;
using static System.FormattableString;

namespace Tarry.Imports.Sticks;

/// <summary>Makes the plan of an import from the positions of a stick, whatever they came from.</summary>
internal sealed class StickPlan(RecordingTarget target, string fileName, string sha256, string format)
{
    // High-speed USB asks at most once a microframe of 125 us; a few that are stamped together are no rate.
    private const double MostPerSecond = 8_100;
    private const int FewestForRate = 100;

    /// <summary>What the recording is.</summary>
    public required StickSetup Setup { get; init; }

    /// <summary>Ticks a second.</summary>
    public required long TickHz { get; init; }

    /// <summary>How the file was read, for the record.</summary>
    public SortedDictionary<string, string> Options { get; init; } = new(StringComparer.Ordinal);

    /// <summary>What the user should know, in words; kept with the session.</summary>
    public List<string> Notes { get; } = [];

    /// <summary>The plan.</summary>
    /// <param name="samples">The positions; at least one.</param>
    /// <param name="rowsRead">Rows or reports read.</param>
    /// <param name="refused">The first that were refused.</param>
    /// <param name="refusedByReason">How many were refused, and why.</param>
    /// <param name="refusedTotal">How many were refused in all.</param>
    /// <exception cref="ImportException">The procedure needs a stimulus that there is none of.</exception>
    public ImportPlan Build(
        StickSamples samples, long rowsRead, IReadOnlyList<RefusedItem> refused, IReadOnlyDictionary<string, long> refusedByReason, long refusedTotal)
    {
        RequireStimulus();
        Options["procedure"] = StickProcedures.Name(Setup.Procedure);
        Options["x_range"] = Invariant($"{Setup.X.Minimum}..{Setup.X.Maximum}");
        Options["y_range"] = Invariant($"{Setup.Y.Minimum}..{Setup.Y.Maximum}");
        var cautions = Cautions(samples).ToList();
        var record = new SessionRecord
        {
            Key = target.Session,
            Segments = [new Segment(null, 1, TickHz, null)],
            Source = new SourceFile(fileName, sha256, format, Options, rowsRead),
            Stick = Setup,
            Refused = refused,
            RefusedTotal = refusedTotal,
            Events = [.. Notes, .. cautions],
        };
        return new ImportPlan
        {
            Sessions = [],
            StickSessions = [new StickSession(record, samples)],
            NewConditions = target.Conditions.Any(condition => condition.Id == target.Session.Condition)
                ? []
                : [new ConditionEntry { Id = target.Session.Condition, Factors = new Dictionary<string, string> { ["control"] = "stick" } }],
            Exclusions = [],
            Record = new ImportRecord
            {
                FileName = fileName,
                Sha256 = sha256,
                Format = format,
                Options = Options,
                RowsRead = rowsRead,
                RowsKept = samples.Count,
                RefusedTotal = refusedTotal,
                RefusedByReason = refusedByReason,
                Refused = refused,
            },
            Notes = [.. Notes, .. cautions],
            Cautions = cautions,
        };
    }

    private void RequireStimulus()
    {
        var needed = Setup.Procedure switch
        {
            StickProcedure.AngleStops => StickStimulus.Angle,
            StickProcedure.Substitution => StickStimulus.Level,
            _ => StickStimulus.None,
        };
        if (needed != StickStimulus.None && Setup.Stimulus != needed)
        {
            throw new ImportException(
                needed == StickStimulus.Angle ? "The procedure angle-stops needs the angle of the stop that the stick stands against." : "The procedure substitution needs the level that stands for the wiper.",
                fileName,
                needed == StickStimulus.Angle ? "Give it as a column stimulus_deg of a table, or name its column with --stimulus-column; the reports of a device do not hold it." : "Give it as columns stimulus_x and stimulus_y of a table, or record it with the rig: tarry host record --procedure substitution --port PORT.");
        }
    }

    private IEnumerable<string> Cautions(StickSamples samples)
    {
        var x = Setup.X;
        if (samples.X.IndexOfAnyExcept(samples.X[0]) < 0 && samples.Y.IndexOfAnyExcept(samples.Y[0]) < 0)
        {
            yield return Invariant($"every position is the same ({samples.X[0]}, {samples.Y[0]}): the columns or fields may be wrong ones");
        }
        else if (Setup.Procedure is StickProcedure.RimSweep or StickProcedure.FlickRelease && Span(samples.X) < (x.Maximum - x.Minimum) / 4)
        {
            yield return Invariant($"x spans {Span(samples.X)} of {x.Maximum - x.Minimum} counts: the range may be a wrong one, or the stick was not pushed to the gate");
        }

        var seconds = (samples.Ticks[^1] - samples.Ticks[0]) / (double)TickHz;
        if (samples.Count >= FewestForRate && samples.Count - 1 > MostPerSecond * seconds)
        {
            yield return Invariant($"{samples.Count} positions in {seconds:0.######} s, more than a device reports: the unit of the times may be a wrong one");
        }
    }

    private static double Span(ReadOnlySpan<double> values)
    {
        var (least, greatest) = (values[0], values[0]);
        foreach (var value in values)
        {
            (least, greatest) = (Math.Min(least, value), Math.Max(greatest, value));
        }

        return greatest - least;
    }
}
