using System.Globalization;
using System.Text;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;

namespace Tarry.Reports.DataPackage;

/// <summary>What a study says of sticks as a table, one row a condition, measure and part: the value with its interval and what it rests on, or why there is none.</summary>
public static class StickFindingsTable
{
    /// <summary>The name of its file.</summary>
    public const string FileName = "stick-findings.csv";

    internal static readonly IReadOnlyList<string> PrimaryKey = ["condition", "key"];

    internal static readonly IReadOnlyList<TableColumn> Columns =
    [
        new("condition", "string", "What was tested.", Required: true),
        new("key", "string", "Measure, part and unit in one: the key in findings.json.", Required: true),
        new("measure", "string", "What is measured; the report defines each.", Required: true),
        new("part", "string", "Of which part of the stick: an axis, a direction, or the whole.", Required: true),
        new("unit", "string", "The unit of value, low and high. percent: of half the range that the axis can say; relative_percent: of something else, which the definition names.", Required: true, Levels: [.. Enum.GetValues<StickUnit>().Select(StickMeasureText.UnitKey)]),
        new("value", "number", "The estimate; empty where there is none."),
        new("low", "number", "Lower end of its interval."),
        new("high", "number", "Upper end of its interval."),
        new("level", "number", "Confidence level of the interval.", Minimum: 0, Maximum: 1),
        new("method", "string", "How the interval was found (docs/methods/sticks.md of the program)."),
        new("replicates", "integer", "How many replicates it rests on.", Minimum: 0),
        new("replicates_of", "string", "Of what."),
        new("sessions", "integer", "How many recordings it rests on; with one, the interval holds within it only.", Minimum: 0),
        new("refused", "string", "Why there is no estimate."),
    ];

    /// <summary>The table as CSV: LF, decimal point, six decimals as in <c>findings.json</c>.</summary>
    public static string Write(StudySticks sticks)
    {
        ArgumentNullException.ThrowIfNull(sticks);
        var text = new StringBuilder().AppendJoin(',', Columns.Select(column => column.Name)).Append('\n');
        foreach (var finding in sticks.Conditions)
        {
            foreach (var (measure, part, outcome) in finding.Measures)
            {
                text.AppendJoin(
                    ',',
                    [
                        finding.Id,
                        StickMeasureText.Key(measure, part),
                        StickMeasureText.MeasureKey(measure),
                        StickMeasureText.PartKey(part),
                        StickMeasureText.UnitKey(StickMeasureText.Of(measure).Unit),
                        .. Cells(outcome),
                    ]).Append('\n');
            }
        }

        return text.ToString();
    }

    private static string[] Cells(StickOutcome outcome) => outcome switch
    {
        StickEstimate estimate =>
        [
            Number(estimate.Value),
            Number(estimate.Low),
            Number(estimate.High),
            Number(estimate.Level),
            estimate.Method,
            Number(estimate.Replicates),
            estimate.ReplicateOf.Contains(',', StringComparison.Ordinal) ? $"\"{estimate.ReplicateOf}\"" : estimate.ReplicateOf,
            Number(estimate.Sessions),
            "",
        ],
        StickRefusal refusal => ["", "", "", "", "", "", "", "", StickRefusalWording.Key(refusal.Reason)],
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "An outcome that is neither an estimate nor a refusal."),
    };

    private static string Number(double value) => (Math.Round(value, 6) + 0.0).ToString("0.######", CultureInfo.InvariantCulture);
}
