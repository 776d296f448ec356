using Tarry.Findings.Contrasts;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>A contrast as sentences for a terminal.</summary>
internal static class ContrastText
{
    public static void Write(ContrastFinding contrast, Terminal terminal)
    {
        var comparison = contrast.Comparison;
        terminal.Out.WriteLine(Spaced(VerdictSentence.Of(comparison)));
        if (contrast.ReferenceChange is not null)
        {
            terminal.Out.WriteLine(Invariant(
                $"Linked through the reference {contrast.A.Reference}: each condition less the reference of its own sittings."));
            if (contrast.ReferenceChange is Estimate<LatencyDifference> change)
            {
                terminal.Out.WriteLine(Invariant(
                    $"The reference itself: {change.Value.Milliseconds:+0.000;-0.000;0.000} ms ({change.Interval.Low.Milliseconds:+0.000;-0.000;0.000} to {change.Interval.High.Milliseconds:+0.000;-0.000;0.000}), taken out of the difference."));
            }
        }

        terminal.Out.WriteLine(contrast.FactorDifferences.Count == 0
            ? "What differs: nothing that the study files state."
            : $"What differs: {string.Join("; ", contrast.FactorDifferences)}.");
        if (comparison.MinimumDetectable is { } detectable)
        {
            terminal.Out.WriteLine(Invariant(
                $"Margin {comparison.MarginMs} ms; these data tell a difference of {detectable.Milliseconds:0.000} ms in four of five such tests."));
        }

        foreach (var caution in contrast.Cautions)
        {
            terminal.Out.WriteLine($"caution ({CautionWording.Key(caution.Kind)}): {CautionWording.Sentence(caution)}");
        }
    }

    // A terminal needs no spaces that hold words together.
    private static string Spaced(string sentence) => sentence.Replace('\u00A0', ' ');
}
