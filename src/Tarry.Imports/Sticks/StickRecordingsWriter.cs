using System.Globalization;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.LongForm;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.Sticks;

/// <summary>Writes what each recording of a stick is as CSV, one row a session, those that are set aside too: what was done, range, step and stimulus, how much there is and where it came from.</summary>
public static class StickRecordingsWriter
{
    private static readonly string[] Columns =
    [
        "session", "condition", "sitting", "procedure", "source", "positions", "duration_s", "rate_hz",
        "x_minimum", "x_maximum", "x_step", "y_minimum", "y_maximum", "y_step",
        "stimulus", "stimulus_unit", "stimulus_uncertainty", "refused", "file_name", "file_sha256", "excluded", "excluded_reason",
    ];

    /// <summary>The names of the columns that a study has, in order: its factors stand last.</summary>
    public static IReadOnlyList<string> ColumnNames(StudyFile study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return [.. Columns, .. new FactorColumns(study, Columns).Names];
    }

    /// <summary>Writes the table.</summary>
    /// <param name="output">Where to; it is flushed and left open.</param>
    /// <param name="study">The study; its sessions are read one after the other.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    public static void Write(TextWriter output, Study study, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(study);
        var factors = new FactorColumns(study.File, Columns);
        output.Write(string.Join(',', ColumnNames(study.File).Select(FactorText.ToCell)) + "\n");
        foreach (var key in study.StickKeys)
        {
            cancellation.ThrowIfCancellationRequested();
            var cells = Cells(study.ReadStick(key), ExclusionOf(key, study.File));
            output.Write(string.Join(',', cells.Concat(factors.Cells(key.Condition))) + "\n");
        }

        output.Flush();
    }

    // As the findings have it: a session is left out as a whole or not at all.
    private static Exclusion? ExclusionOf(SessionKey key, StudyFile study) =>
        study.Exclusions.FirstOrDefault(exclusion => exclusion.Session == key && exclusion is { FirstSequence: null, LastSequence: null });

    private static string[] Cells(StickSession session, Exclusion? exclusion)
    {
        var (record, setup, samples) = (session.Record, session.Setup, session.Samples);
        double[] times = [.. Enumerable.Range(0, samples.Count).Select(index => (double)StickRows.TimeUs(session, index))];
        return
        [
            record.Key.ToString(),
            record.Key.Condition,
            record.Key.Sitting,
            StickProcedures.Name(setup.Procedure),
            setup.Source,
            Number(samples.Count),
            Number(Math.Round((times[^1] - times[0]) / 1_000_000, 6)),
            MedianGapUs(times) is > 0 and var gap ? Number(Math.Round(1_000_000 / gap, 3)) : "",
            Number(setup.X.Minimum),
            Number(setup.X.Maximum),
            Number(setup.X.Step),
            Number(setup.Y.Minimum),
            Number(setup.Y.Maximum),
            Number(setup.Y.Step),
            setup.Stimulus switch { StickStimulus.Angle => "angle", StickStimulus.Level => "level", _ => "none" },
            setup.Stimulus switch { StickStimulus.Angle => "deg", StickStimulus.Level => "share", _ => "" },
            Number(setup.StimulusUncertainty),
            Number(record.RefusedTotal),
            FactorText.ToCell(record.Source?.FileName ?? ""),
            record.Source?.Sha256 ?? "",
            exclusion is null ? "0" : "1",
            FactorText.ToCell(exclusion?.Reason ?? ""),
        ];
    }

    private static double? MedianGapUs(double[] times)
    {
        double[] gaps = [.. times.Skip(1).Zip(times, (next, time) => next - time).Order()];
        return gaps.Length == 0 ? null : gaps[gaps.Length / 2];
    }

    private static string Number(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";
}
