using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Play;
using Tarry.Metrology;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>What the latencies mean for play: a constant delay can be learned, an erratic one cannot.</summary>
public static class PlaySection
{
    /// <summary>The section, or null where the findings say nothing of play.</summary>
    public static XElement? Build(FindingsDocument document) => document.Play is not { } play
        ? null
        : Html.Section(
            "play",
            "In play",
            Html.Paragraph("A player learns a constant delay and presses earlier by it; what varies from press to press stays as an error. So each condition is judged with the constant compensation that suits it most: how often a press then lands within a timing window, and how far off it is."),
            Html.Paragraph(PlayWording.Assumptions(play.Settings)),
            Html.List(play.Rankings.Select(ranking => PlayWording.Sentence(document, ranking))),
            play.Settings.PlayerSdsMs.Select(player => Hits(document, play, player)),
            Errors(document, play));

    private static XElement Hits(FindingsDocument document, StudyPlay play, double player)
    {
        var table = new HtmlTable(
            $"How often {PlayWording.Player(player)} hits, %, with the ranks that the data allow. 95\u00A0% intervals beneath.",
            ["condition", .. play.Settings.WindowsMs.SelectMany(window => new[] { $"within {PlayWording.Window(window)}\u00A0ms", "rank" })]);
        foreach (var (row, _) in Rows(document, play))
        {
            table.Add(
                new(row.Condition.Id, row.Condition.IsReference ? "reference" : ""),
                [.. play.Rankings.Where(ranking => ranking.PlayerSdMs == player).SelectMany(ranking => Cells(play, row.Condition.Id, ranking))]);
        }

        return table.Element;
    }

    private static IEnumerable<TableCell> Cells(StudyPlay play, string id, PlayRanking ranking)
    {
        var ranked = ranking.Conditions.Single(condition => condition.Id == id);
        yield return TableCell.Of(PlayWording.Find(play, id, ranking).HitProbability, Quantity.Share);
        yield return ranked.BestRank == ranked.WorstRank
            ? Numbers.Whole(ranked.BestRank)
            : $"{Numbers.Whole(ranked.BestRank)}\u00A0to\u00A0{Numbers.Whole(ranked.WorstRank)}";
    }

    private static XElement Errors(FindingsDocument document, StudyPlay play)
    {
        var players = play.Settings.PlayerSdsMs.Select((player, index) => (Player: player, Index: index)).Where(entry => entry.Player > 0).ToList();
        var table = new HtmlTable(
            "The mean absolute timing error after compensation. Learned: the constant that a player can get used to. Good constants for a window: those whose hit probability is within one standard error of the highest.",
            [
                "condition",
                "learned, ms",
                "error from the device, ms",
                .. players.Select(entry => $"with a player of {Numbers.Plain(entry.Player)}\u00A0ms, ms"),
                $"good constants to hit within {PlayWording.Window(play.Settings.WindowsMs[0])}\u00A0ms",
            ]);
        foreach (var (row, finding) in Rows(document, play))
        {
            table.Add(
                new(row.Condition.Id, row.Condition.IsReference ? "reference" : ""),
                [
                    finding.Learned is { } learned ? Numbers.Fixed(learned.Milliseconds, 2) : "not known",
                    TableCell.Of(finding.DeviceError, Quantity.Scatter),
                    .. players.Select(entry => (TableCell)Numbers.Fixed(finding.ErrorsWithPlayerMs[entry.Index], 2)),
                    TableCell.Words(Good(finding.Windows[^play.Settings.WindowsMs.Count])),
                ]);
        }

        return table.Element;
    }

    private static string Good(PlayWindow window) => window.GoodCompensations.Count == 0
        ? "not known"
        : Listing.And([.. window.GoodCompensations.Select(interval => $"{Numbers.Fixed(interval.Low.Milliseconds, 1)} to {Numbers.Fixed(interval.High.Milliseconds, 1)}")]) + "\u00A0ms";

    private static IEnumerable<(RankedRow Row, PlayFinding Finding)> Rows(FindingsDocument document, StudyPlay play)
    {
        var byId = play.Conditions.ToDictionary(condition => condition.Id);
        return RankedRow.Of(document).Where(row => byId.ContainsKey(row.Condition.Id)).Select(row => (row, byId[row.Condition.Id]));
    }
}
