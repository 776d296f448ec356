using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>What each quantity is, by which methods its intervals were found, and where these come from.</summary>
internal static class MethodsSection
{
    private const string VerdictPage = "docs/methods/verdicts-and-ranking.md";

    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        var used = new SortedSet<string>(StringComparer.Ordinal);
        var list = new XElement("dl");
        Describe(list, used, "Mean", "The unweighted mean of the session means, of the responses that arrived. The session, not the trial, is the unit of inference: trials of one session share whatever that set-up of the bench brought with it.", document, condition => condition.Mean, condition => condition.MeanWithBetweenSessions);
        Describe(list, used, "Mean less reference", "Differences from the reference within each sitting, then over sittings, so that what a sitting does to both cancels.", document, condition => condition.Relative);
        Describe(list, used, "Quantiles", "p5, p25, median, p75, p95 and p99 over all trials, by linear interpolation of the order statistics (type 7 of R. J. Hyndman and Y. Fan, Amer. Statist. 50, 1996); a missed trial counts as later than any response.", document, condition => condition.P05, condition => condition.P25, condition => condition.Median, condition => condition.P75, condition => condition.P95, condition => condition.P99);
        Describe(list, used, "Standard deviation", "Within a session; over several, the root of the mean square.", document, condition => condition.StandardDeviation);
        Describe(list, used, "Spread", "p95 less p5; of one session, by the limits of both at 97.5 % each.", document, condition => condition.Spread);
        Describe(list, used, "Late share", "The share of responses later than the limit that stands beside it.", document, condition => condition.LateShare);
        Describe(list, used, "Missed share", "The share of presses without a response.", document, condition => condition.MissedShare);
        if (document.Conditions.Any(condition => condition.DeviceOnly?.ReferenceSlot is not null))
        {
            Describe(list, used, "Device alone", "Mean: the difference from the reference and half of the reference's report interval. Standard deviation: from differences of variances within sittings, the variance of the reference's own wait for a slot added back. Density: the same wait laid over the latencies, and what the reference measured taken out by Richardson-Lucy iteration, its number chosen by held-out trials; the band is of sampling only. Page: docs/methods/device-only.md.", document, condition => condition.DeviceOnly?.Mean, condition => condition.DeviceOnly?.StandardDeviation);
        }

        used.UnionWith(document.Comparisons.Select(comparison => comparison.Difference).OfType<Estimate<LatencyDifference>>().Select(difference => difference.Method));
        used.UnionWith((document.Factors ?? []).SelectMany(factor => factor.Costs).Select(cost => cost.Cost).OfType<Estimate<LatencyDifference>>().Select(cost => cost.Method));
        DescribePlay(list, used, document);
        if (document.Comparisons.Count > 0)
        {
            Verdicts(list);
        }

        var texts = used.SelectMany(Text).ToList();
        return Html.Section(
            "methods",
            "Methods",
            list,
            texts.Count == 0 ? null : Html.Subheading("Intervals by name"),
            texts.Count == 0 ? null : new XElement("dl", texts, Moderated(used)),
            Html.Paragraph("The pages lie in the source of Tarry. They hold assumptions, accuracy by simulation, and traps."));
    }

    private static void Verdicts(XElement list)
    {
        Entry(list, "Verdicts", "Slower or faster: told and not small. Below the margin: told and small. No difference that matters: not told and small. Undecided: neither.");
        Entry(list, "Told", $"The p of no difference, two-sided by Student's t, adjusted over the pairs of the study after S. Holm, Scand. J. Statist. 6 (1979), is below 0.05. Page: {VerdictPage}.");
        Entry(list, "Small", $"Two one-sided tests at 5\u00A0%, after D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987): the 90\u00A0% interval lies inside the margin. Page: {VerdictPage}.");
        Entry(list, "Tells from", $"The smallest difference that these sittings find with 80\u00A0% power at the 5\u00A0% level, before the adjustment for the number of pairs: (t₀.₉₇₅ + t₀.₈₀) times the standard error. Page: {VerdictPage}.");
        Entry(list, "Rank", $"The ranks that the data allow a condition begin one after those told faster than it and end before those told slower, by the intervals of J. W. Tukey and C. Y. Kramer, Biometrics 12 (1956). Page: {VerdictPage}.");
    }

    private static void Describe<T>(XElement list, SortedSet<string> used, string term, string sentence, FindingsDocument document, params ReadOnlySpan<Func<ConditionFinding, EstimateOutcome<T>?>> outcomes)
        where T : struct, IComparable<T>
    {
        var methods = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var outcomeOf in outcomes)
        {
            methods.UnionWith(document.Conditions.Select(outcomeOf).OfType<Estimate<T>>().Select(estimate => estimate.Method));
        }

        used.UnionWith(methods);
        var found = methods.Count switch
        {
            0 => "",
            1 => $" Interval: {methods.Single()}.",
            _ => $" Intervals: {string.Join("; ", methods)}.",
        };
        Entry(list, term, sentence + found);
    }

    private static void DescribePlay(XElement list, SortedSet<string> used, FindingsDocument document)
    {
        if (document.Play is not { } play)
        {
            return;
        }

        var methods = new SortedSet<string>(StringComparer.Ordinal);
        methods.UnionWith(play.Conditions.SelectMany(condition => condition.Windows).Select(window => window.HitProbability).OfType<Estimate<Proportion>>().Select(hits => hits.Method));
        methods.UnionWith(play.Comparisons.Select(pair => pair.Difference).OfType<Estimate<ProportionDifference>>().Select(difference => difference.Method));
        methods.UnionWith(play.Conditions.Select(condition => condition.DeviceError).OfType<Estimate<LatencyDifference>>().Select(error => error.Method));
        used.UnionWith(methods);
        Entry(list, "In play", $"The greatest probability, over constant compensations, that a press lands within the window, by the measured latencies and a normal error of the player; ranks by differences told after S. Holm over the pairs of one player and window. Intervals: {string.Join("; ", methods)}.");
    }

    private static IEnumerable<XElement> Text(string method)
    {
        if (MethodText.Of(method) is not { } text)
        {
            yield break;
        }

        yield return new XElement("dt", PlainText.Clean(method));
        yield return new XElement("dd", $"{text.Words} Formula: {text.Formula}. Source: {text.Source}. Page: {text.Page}.");
    }

    private static IEnumerable<XElement> Moderated(IEnumerable<string> methods) =>
        methods.Any(method => MethodText.Of(method) is { IsModerated: true })
            ? [new XElement("dt", "Moderated variance"), new XElement("dd", MethodText.ModeratedVariance)]
            : [];

    private static void Entry(XElement list, string term, string text) =>
        list.Add(new XElement("dt", term), new XElement("dd", PlainText.Clean(text)));
}
