using System.Globalization;
using Tarry.Imports.DelimitedText;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.LongForm;

/// <summary>The columns that say what a condition is: its factors, and the report rate that its maker states.</summary>
/// <param name="study">The study file.</param>
/// <param name="beside">The columns that the table has besides: a factor that is called as one of them keeps apart from it.</param>
internal sealed class FactorColumns(StudyFile study, IReadOnlyList<string> beside)
{
    private const string Rate = "nominal_report_hz";

    /// <summary>The factors that any condition has, the usual ones first.</summary>
    public IReadOnlyList<string> Factors { get; } = [.. study.Conditions.SelectMany(condition => condition.Factors.Keys).Distinct().OrderBy(UsualPlace)];

    /// <summary>Whether any condition states a report rate.</summary>
    public bool WithRates { get; } = study.Conditions.Any(condition => condition.NominalReportHz is not null);

    /// <summary>The names of the columns, in order.</summary>
    public IReadOnlyList<string> Names => [.. Factors.Select(Name), .. WithRates ? new[] { Rate } : []];

    /// <summary>The name of a factor's column.</summary>
    public string Name(string factor) => beside.Contains(factor) || factor == "session" ? $"factor_{factor}" : factor;

    /// <summary>The declaration of a condition; null where there is none.</summary>
    public ConditionEntry? Of(string condition) => study.Conditions.FirstOrDefault(entry => entry.Id == condition);

    /// <summary>The cells of a condition, in the order of <see cref="Names"/>.</summary>
    public IEnumerable<string> Cells(string condition)
    {
        var entry = Of(condition);
        var levels = Factors.Select(factor => FactorText.ToCell(entry?.Factors.GetValueOrDefault(factor) ?? ""));
        return WithRates ? levels.Append(entry?.NominalReportHz?.ToString("0.############", CultureInfo.InvariantCulture) ?? "") : levels;
    }

    private static int UsualPlace(string factor)
    {
        var place = HeaderReader.KnownFactors.IndexOf(factor);
        return place < 0 ? int.MaxValue : place;
    }
}
