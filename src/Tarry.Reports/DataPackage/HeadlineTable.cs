using System.Globalization;
using System.Text;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Statistics.Distributions;

namespace Tarry.Reports.DataPackage;

/// <summary>
/// The headline as a table, one row a condition in order of mean: the mean and the difference from the reference with their
/// intervals, and beside each what the interval was made from. <c>recheck.R</c> and <c>recheck.py</c> take the latter from here
/// and everything else from the trials.
/// </summary>
public static class HeadlineTable
{
    /// <summary>The name of its file.</summary>
    public const string FileName = "headline.csv";

    private const string Shared = "What the other conditions lend to the variance of session values: variance = shared + own_weight x s^2.";
    private const string Weight = "The weight of the condition's own variance of session values; 1 where nothing is borrowed.";
    private const string Quantile = "0.975 quantile of Student's t at these degrees of freedom: half-width = t sqrt(variance / J).";

    internal static readonly IReadOnlyList<TableColumn> Columns =
    [
        new("condition", "string", "What was tested.", Required: true),
        new("is_reference", "integer", "1 for the reference condition, else 0.", Required: true, Minimum: 0, Maximum: 1),
        new("sessions", "integer", "Sessions with used trials: the unit of inference.", Required: true, Minimum: 0),
        new("used_trials", "integer", "Responses that are not excluded.", Required: true, Minimum: 0),
        .. Estimate("mean", "Mean of the session means"),
        .. Estimate("difference", "Mean less the reference's, within the sittings that both were run in"),
    ];

    /// <summary>The table as CSV: LF, decimal point, milliseconds to the nanosecond. Empty where there is not enough data.</summary>
    public static string Write(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var text = new StringBuilder().AppendJoin(',', Columns.Select(column => column.Name)).Append('\n');
        foreach (var ranked in document.Ranking)
        {
            var condition = document.Conditions.First(candidate => candidate.Id == ranked.Id);
            text.AppendJoin(
                ',',
                [
                    condition.Id,
                    condition.IsReference ? "1" : "0",
                    Whole(condition.UsedSessions),
                    Whole(condition.Counts.Used),
                    .. Cells(condition.Mean, latency => latency.Milliseconds, condition.MeanScatter),
                    .. Cells(condition.Relative, difference => difference.Milliseconds, ScatterAgainstReference(condition, document)),
                ]).Append('\n');
        }

        return text.ToString();
    }

    private static TableColumn[] Estimate(string name, string what) =>
    [
        new($"{name}_ms", "number", what + ".", "ms"),
        new($"{name}_low_ms", "number", $"{what}: lower end of the 95 % interval.", "ms"),
        new($"{name}_high_ms", "number", $"{what}: upper end of the 95 % interval.", "ms"),
        new($"{name}_method", "string", $"{what}: how the interval was found (docs/methods of the program)."),
        new($"{name}_shared_variance_ms2", "number", Shared, "ms^2", Minimum: 0),
        new($"{name}_own_weight", "number", Weight, Minimum: 0, Maximum: 1),
        new($"{name}_degrees_of_freedom", "number", "Degrees of freedom of that variance.", Minimum: 0),
        new($"{name}_t", "number", Quantile, Minimum: 0),
    ];

    private static ModeratedScatter? ScatterAgainstReference(ConditionFinding condition, FindingsDocument document) =>
        document.Comparisons.FirstOrDefault(pair =>
            (pair.A == condition.Id && pair.B == document.Reference) || (pair.B == condition.Id && pair.A == document.Reference))?.Scatter;

    private static string[] Cells<T>(EstimateOutcome<T>? outcome, Func<T, double> milliseconds, ModeratedScatter? scatter)
        where T : struct, IComparable<T>
    {
        if (outcome is not Estimate<T> estimate)
        {
            return ["", "", "", "", "", "", "", ""];
        }

        string[] moderated = scatter is null
            ? ["", "", "", ""]
            : [
                Digits(scatter.SharedVarianceMs2),
                Digits(scatter.OwnWeight),
                Digits(scatter.DegreesOfFreedom),
                Digits(StudentDistribution.Quantile(0.975, scatter.DegreesOfFreedom)),
            ];
        return
        [
            Number(milliseconds(estimate.Value)),
            Number(milliseconds(estimate.Interval.Low)),
            Number(milliseconds(estimate.Interval.High)),
            estimate.Method,
            .. moderated,
        ];
    }

    private static string Whole(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Number(double milliseconds) => (Math.Round(milliseconds, 6) + 0.0).ToString("0.000000", CultureInfo.InvariantCulture);

    private static string Digits(double value) => value.ToString("G10", CultureInfo.InvariantCulture);
}
