using System.Text.RegularExpressions;
using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Budgets;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>The uncertainty budget: means against the second, what the rig adds to their uncertainty, and what cancels in differences.</summary>
public static class BudgetSection
{
    private const string Page = "docs/methods/uncertainty-budget.md";

    /// <summary>The section, or null where no condition has a budget.</summary>
    public static XElement? Build(FindingsDocument document)
    {
        var stated = document.Conditions
            .Where(condition => condition.Budget?.Mean is not null)
            .Select(condition => (Condition: condition, Budget: condition.Budget!, Mean: condition.Budget!.Mean!))
            .ToList();
        if (stated.Count == 0)
        {
            return null;
        }

        var uncalibrated = stated.Where(entry => !entry.Budget.Calibrated).Select(entry => entry.Condition.Id).ToList();
        return Html.Section(
            "budget",
            "Uncertainty of absolute latencies",
            Html.Paragraph($"The intervals elsewhere in this report say what other sittings would change; they leave the rig itself out. Here a mean is corrected for the rig's own delays, by the middle of their limits where only limits are known, and the uncertainties of its clock, tick, threshold, actuator and own reading are combined with that of sampling by the law of propagation (JCGM 100:2008, 5.1.2); the interval has the coverage factor k of Student's t on the effective degrees of freedom (G.4.1). Page: {Page}."),
            uncalibrated.Count == 0 ? null : Html.Paragraph($"{(uncalibrated.Count == stated.Count ? "The rig was not calibrated" : $"The rig was not calibrated in every session of {Listing.And(uncalibrated)}")}: limits of its class stand in for what a calibration would tell."),
            Means(stated),
            Inputs([.. stated.SelectMany(entry => entry.Budget.Inputs)]),
            Cancelling(document) is { } sentence ? Html.Paragraph(sentence) : null);
    }

    private static XElement Means(List<(ConditionFinding Condition, ConditionBudget Budget, AbsoluteLatency Mean)> stated)
    {
        var sources = stated.SelectMany(entry => entry.Mean.Stated.Contributions).Select(part => part.Source).Distinct().Order().ToList();
        var table = new HtmlTable(
            $"Means in absolute terms, with the interval at {Level(stated[0].Mean.Stated.Uncertainty.Level)} beneath, and what each source adds to the standard uncertainty, in µs.",
            ["condition", "mean, ms", "corrected by, µs", "k", .. sources.Select(Head)]);
        foreach (var (condition, _, mean) in stated)
        {
            var decimals = Decimals(mean.Interval.High.Milliseconds - mean.Interval.Low.Milliseconds);
            table.Add(
                new(condition.Id, condition.IsReference ? "reference" : ""),
                [
                    new(Fixed(mean.Value.Milliseconds, decimals), $"{Fixed(mean.Interval.Low.Milliseconds, decimals)}{NoBreakSpace}to{NoBreakSpace}{Fixed(mean.Interval.High.Milliseconds, decimals)}"),
                    new(Fixed(mean.Stated.Correction.Microseconds, 1)),
                    new(Fixed(mean.Stated.Uncertainty.CoverageFactor, 2)),
                    .. sources.Select(source => new TableCell(mean.Stated.Contributions.FirstOrDefault(part => part.Source == source) is { } part ? Small(part.Milliseconds * 1000) : "none")),
                ]);
        }

        return table.Element;
    }

    private static XElement Inputs(IReadOnlyList<BudgetInput> inputs)
    {
        var table = new HtmlTable("What is known of each source, and from where.", "source", "estimate", "standard uncertainty", "basis");
        foreach (var group in inputs.GroupBy(input => (input.Source, input.Unit, input.Basis)).OrderBy(group => group.Key.Source))
        {
            table.Add(Name(group.Key.Source), [Range(group.Select(input => input.Estimate), Unit(group.Key.Unit)), Range(group.Select(input => input.StandardUncertainty), Unit(group.Key.Unit)), TableCell.Words(InWords(group.Key.Basis))]);
        }

        return table.Element;
    }

    private static string? Cancelling(FindingsDocument document)
    {
        var pairs = document.Comparisons.Select(comparison => comparison.Budget).OfType<StatedUncertainty>().ToList();
        var sources = pairs.SelectMany(budget => budget.Contributions)
            .GroupBy(part => part.Source)
            .Where(group => group.Count() == pairs.Count && group.All(part => part.Cancels))
            .Select(group => Name(group.Key))
            .ToList();
        return sources.Count == 0 ? null : $"In the differences of this report the {Listing.And(sources)} {(sources.Count == 1 ? "cancels" : "cancel")}: the error is one and the same on both sides. A clock's rate acts on a difference by its own size alone.";
    }

    private static string Range(IEnumerable<double> values, string unit)
    {
        var (low, high) = (values.Min(), values.Max());
        return Small(low) == Small(high) ? $"{Small(low)}{NoBreakSpace}{unit}" : $"{Small(low)}{NoBreakSpace}to{NoBreakSpace}{Small(high)}{NoBreakSpace}{unit}";
    }

    internal static string Small(double value) => value switch
    {
        > 0 and < 0.005 => $"below{NoBreakSpace}0.01",
        < 10 => Plain(Math.Round(value, 2)),
        _ => Plain(Math.Round(value, 1)),
    };

    // The head of a column, where "rate of" and "delay" would make it wider than its numbers.
    private static string Head(UncertaintySource source) => source switch
    {
        UncertaintySource.ClockRate => "rig's clock",
        UncertaintySource.HostClock => "host's clock",
        UncertaintySource.ThresholdDelay => "threshold",
        UncertaintySource.ActuatorDelay => "actuator",
        UncertaintySource.LoopBackDelay => "own reading",
        _ => Name(source),
    };

    // Findings keep to letters that every terminal has; and what follows a sign of more or less is here always a limit.
    private static string InWords(string basis) => Regex.Replace(basis.Replace("+-", "within ", StringComparison.Ordinal), @"\bus\b", "µs");

    private static string Unit(string unit) => unit == "us" ? "µs" : unit;

    internal static string Name(UncertaintySource source) => source switch
    {
        UncertaintySource.ClockRate => "rate of the rig's clock",
        UncertaintySource.HostClock => "rate of the host's clock",
        UncertaintySource.Tick => "tick",
        UncertaintySource.ThresholdDelay => "threshold delay",
        UncertaintySource.ActuatorDelay => "actuator delay",
        UncertaintySource.LoopBackDelay => "delay of the rig's own reading",
        UncertaintySource.Sampling => "sampling",
        _ => throw new ArgumentOutOfRangeException(nameof(source), source, "A source without words."),
    };
}
