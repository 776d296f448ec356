using System.Globalization;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.Recordings;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Imports.Sticks;

/// <summary>Reads a table of a stick's positions, one row a position. See <c>docs/formats/stick.md</c>.</summary>
public static class StickTableImport
{
    /// <summary>The name of the format in records of imports.</summary>
    public const string Format = "stick-csv";

    private const int RowsBetweenReports = 65_536;

    /// <summary>Reads a file completely and says what it would add to a study; nothing is written.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">The columns, ranges and units.</param>
    /// <param name="target">What it is taken in as; the key names the procedure.</param>
    /// <param name="progress">Told about every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <remarks>
    /// A bad row is refused with its line and its reason and the rest is kept. A position outside the stated range is refused: either it or the
    /// range is wrong. Times are kept as whole ticks, microseconds where all are whole ones, else nanoseconds. y is turned so that up is greater.
    /// </remarks>
    /// <exception cref="ImportException">The file has no such columns, nothing of it could be kept, or the procedure needs a stimulus that it does not have.</exception>
    /// <exception cref="ArgumentException">A range or the supply is none, or the key names no procedure.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static ImportPlan Read(
        string path, StickTableOptions options, RecordingTarget target, IProgress<ImportProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(target);
        if (!(double.IsFinite(options.Supply) && options.Supply > 0))
        {
            throw new ArgumentException(Invariant($"The supply is {options.Supply}; give its volts, or leave it out where levels are shares of it."), nameof(options));
        }

        var fileName = Path.GetFileName(path);
        RequireStepWithinRange(options, fileName);
        using var file = OpenedFile.Open(path);
        try
        {
            using var reader = new RowReader(file.Content, options.Text.Delimiter ?? file.InferDelimiter(options.Text.CommentPrefix), options.Text.CommentPrefix);
            var columns = Columns(reader, fileName, options);
            var rows = new StickTableRows(columns, options, fileName);
            while (reader.Read())
            {
                rows.Take(reader);
                if (rows.Read % RowsBetweenReports == 0)
                {
                    cancellation.ThrowIfCancellationRequested();
                    progress?.Report(new ImportProgress(fileName, file.Content.Position, file.Content.Length, rows.Read));
                }
            }

            RequireSomething(rows, columns, fileName);
            return Plan(rows, columns, options, target, fileName, file.Content.Sha256);
        }
        catch (IOException failure)
        {
            throw new ImportException($"Reading stopped: {failure.Message}", fileName, "Check the disk or the connection and import again.", failure);
        }
    }

    private static void RequireStepWithinRange(StickTableOptions options, string fileName)
    {
        foreach (var range in new[] { options.X, options.Y })
        {
            if (range.Step > range.Maximum - range.Minimum)
            {
                throw new ImportException(
                    Invariant($"The step is {range.Step}, more than the whole range {range.Minimum}..{range.Maximum}."),
                    fileName,
                    "Give --step as the distance of neighbouring counts, in the unit of the range.");
            }
        }
    }

    private static StickTableColumns Columns(RowReader reader, string fileName, StickTableOptions options)
    {
        if (options.Text.Header is { } names)
        {
            return StickTableColumns.Of([.. names.Select(name => name.Trim())], fileName, options);
        }

        if (!reader.Read() || reader.Defect != RowDefect.None)
        {
            throw new ImportException("The file has no header.", fileName, "Give a table whose first line names its columns: time_us,x,y.");
        }

        string[] header = [.. Enumerable.Range(0, reader.Count).Select(index => reader[index].Trim().ToString())];
        return StickTableColumns.Of(header, $"{fileName} line {reader.Line}", options);
    }

    private static void RequireSomething(StickTableRows rows, StickTableColumns columns, string fileName)
    {
        if (rows.Read == 0)
        {
            throw new ImportException("There are no rows below the header.", fileName, "Give a file with at least one row.");
        }

        if (rows.Kept == 0)
        {
            var first = rows.Refusals.Items[0];
            var reasons = string.Join("; ", rows.Refusals.ByReason.Select(pair => string.Create(CultureInfo.InvariantCulture, $"{pair.Key} ({pair.Value})")));
            throw new ImportException(
                $"None of the {rows.Read} rows could be kept: {reasons}. The first: {first.Reason}.",
                first.Place,
                $"Check the columns ({string.Join(", ", columns.Header.Take(20))}), --x-range and --y-range, and the options for delimiter and decimal comma.");
        }
    }

    private static ImportPlan Plan(StickTableRows rows, StickTableColumns columns, StickTableOptions options, RecordingTarget target, string fileName, string sha256)
    {
        // Counts that are all whole stand a step of one apart unless the user states another.
        var impliedStep = rows.WholeCounts ? 1.0 : (double?)null;
        var plan = new StickPlan(target, fileName, sha256, Format)
        {
            Setup = new StickSetup
            {
                Procedure = target.Session.Procedure ?? throw new ArgumentException($"{target.Session} names no procedure.", nameof(target)),
                Source = StickSetup.FromCsv,
                X = options.X with { Step = options.X.Step ?? impliedStep },
                Y = options.Y with { Step = options.Y.Step ?? impliedStep },
                Stimulus = columns.Stimulus,
                StimulusUncertainty = options.StimulusUncertainty,
            },
            TickHz = rows.TickHz,
        };
        plan.Options["columns"] = string.Join(',', Used(columns).Select(index => columns.Header[index]));
        plan.Options["time_unit"] = TimeUnits.Symbol(columns.TimeUnit);
        plan.Options["y_direction"] = options.Vertical == VerticalDirection.Up ? "up" : "down";
        if (columns.Stimulus == StickStimulus.Level)
        {
            plan.Options["supply"] = options.Supply.ToString(CultureInfo.InvariantCulture);
        }

        if (rows.Rounded > 0)
        {
            plan.Notes.Add(Invariant($"{rows.Rounded} times were finer than a nanosecond and were rounded to it"));
        }

        if (Enumerable.Range(0, columns.Header.Count).Except(Used(columns)).Select(index => columns.Header[index]).ToList() is { Count: > 0 } unused)
        {
            plan.Notes.Add($"columns that were left aside: {string.Join(", ", unused.Take(20))}");
        }

        return plan.Build(rows.Samples(), rows.Read, rows.Refusals.Items, rows.Refusals.ByReason, rows.Read - rows.Kept);
    }

    private static IEnumerable<int> Used(StickTableColumns columns) =>
        new[] { columns.Time, columns.X, columns.Y, columns.Angle, columns.LevelX, columns.LevelY }.Where(index => index >= 0);
}
