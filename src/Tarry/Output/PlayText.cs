using Spectre.Console;
using Tarry.Findings;
using Tarry.Findings.Play;
using Tarry.Metrology;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>What the latencies mean for play, as a short table and sentences for a terminal.</summary>
internal static class PlayText
{
    public static void Write(FindingsDocument document, Terminal terminal)
    {
        if (document.Play is not { } play)
        {
            return;
        }

        terminal.Out.WriteLine();
        terminal.Out.WriteLine("In play, with the best constant compensation: hits in %, players by the standard deviation of their own timing; and the device's mean timing error in ms.");
        var table = new Table { Border = TableBorder.Simple, UseSafeBorder = true };
        table.AddColumn(new TableColumn("condition").NoWrap());
        foreach (var ranking in play.Rankings)
        {
            table.AddColumn(new TableColumn(Invariant($"sd {Numbers.Plain(ranking.PlayerSdMs)}, +-{PlayWording.Window(ranking.WindowMs)} ms")).NoWrap());
        }

        table.AddColumn(new TableColumn("error").NoWrap());
        foreach (var condition in Ordered(document, play))
        {
            table.AddRow([condition.Id, .. condition.Windows.Select(window => Cell(window.HitProbability)), Error(condition)]);
        }

        var console = terminal.Tables();
        console.Profile.Width = Math.Max(console.Profile.Width, 200);
        console.Write(table);
        terminal.Out.WriteLine(Plain(PlayWording.Assumptions(play.Settings)));
        foreach (var ranking in play.Rankings)
        {
            terminal.Out.WriteLine(Plain(PlayWording.Sentence(document, ranking)));
        }
    }

    private static IEnumerable<PlayFinding> Ordered(FindingsDocument document, StudyPlay play)
    {
        var places = document.Ranking.Select((ranked, place) => (ranked.Id, place)).ToDictionary(entry => entry.Id, entry => entry.place);
        return play.Conditions.OrderBy(condition => places.GetValueOrDefault(condition.Id, int.MaxValue));
    }

    private static string Cell(EstimateOutcome<Proportion> outcome)
    {
        if (outcome is not Estimate<Proportion> hits)
        {
            return "?";
        }

        var decimals = Numbers.Decimals(100 * (hits.Interval.High.Value - hits.Interval.Low.Value));
        return $"{Numbers.Fixed(100 * hits.Value.Value, decimals)} ({Numbers.Fixed(100 * hits.Interval.Low.Value, decimals)} to {Numbers.Fixed(100 * hits.Interval.High.Value, decimals)})";
    }

    private static string Error(PlayFinding condition) => condition.DeviceError is Estimate<LatencyDifference> error
        ? Numbers.Fixed(error.Value.Milliseconds, Numbers.Decimals(error.Interval.High.Milliseconds - error.Interval.Low.Milliseconds))
        : "?";

    // A terminal needs no spaces that hold words together.
    private static string Plain(string sentence) => sentence.Replace('\u00A0', ' ');
}
