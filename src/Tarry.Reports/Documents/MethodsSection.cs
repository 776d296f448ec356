using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>What each quantity is, and by which methods its intervals were found.</summary>
internal static class MethodsSection
{
    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        var list = new XElement("dl");
        Describe(list, "Mean", "The unweighted mean of the session means, of the responses that arrived. The session, not the trial, is the unit of inference: trials of one session share whatever that set-up of the bench brought with it.", document, condition => condition.Mean);
        Describe(list, "Mean less reference", "Differences from the reference within each sitting, then over sittings, so that what a sitting does to both cancels.", document, condition => condition.Relative);
        Describe(list, "Quantiles", "p5, median, p95 and p99 over all trials; a missed trial counts as later than any response.", document, condition => condition.P05, condition => condition.Median, condition => condition.P95, condition => condition.P99);
        Describe(list, "Standard deviation", "Within a session, pooled over sessions.", document, condition => condition.StandardDeviation);
        Describe(list, "Spread", "p95 less p5 within a session, pooled over sessions.", document, condition => condition.Spread);
        Describe(list, "Late share", "The share of responses later than the known waits of the chain explain, or than the stated limit where those are not known.", document, condition => condition.LateShare);
        Describe(list, "Missed share", "The share of presses without a response.", document, condition => condition.MissedShare);
        list.Add(
            new XElement("dt", "Verdicts"),
            new XElement("dd", "Slower or faster: told and not small. Below the margin: told and small. No difference that matters: not told and small. Undecided: neither. Tells from: the smallest difference that these sittings find with 80\u00A0% power at the 5\u00A0% level, before the adjustment for the number of pairs."));
        return Html.Section("methods", "Methods", list, Html.Paragraph("The names of the methods are those of docs/methods in the source of Tarry."));
    }

    private static void Describe<T>(XElement list, string term, string sentence, FindingsDocument document, params ReadOnlySpan<Func<ConditionFinding, EstimateOutcome<T>?>> outcomes)
        where T : struct, IComparable<T>
    {
        var methods = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var outcomeOf in outcomes)
        {
            methods.UnionWith(document.Conditions.Select(outcomeOf).OfType<Estimate<T>>().Select(estimate => estimate.Method));
        }

        var found = methods.Count switch
        {
            0 => "",
            1 => $" Interval: {methods.Single()}.",
            _ => $" Intervals: {string.Join("; ", methods)}.",
        };
        list.Add(new XElement("dt", term), new XElement("dd", PlainText.Clean(sentence + found)));
    }
}
