using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rankings;
using Tarry.Findings.Sticks.Stops;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>How truly sticks say where they are: what each departs in, figures, measures, ranks, what layers do, and how each measure is defined.</summary>
public static class SticksSection
{
    /// <summary>The section, or null where the study has no recording of a stick.</summary>
    /// <param name="document">The findings.</param>
    /// <param name="figures">The figures that the report has.</param>
    public static XElement? Build(FindingsDocument document, IReadOnlyList<StudyFigure> figures)
    {
        if (document.Sticks is not { } sticks)
        {
            return null;
        }

        return Html.Section(
            "sticks",
            "Sticks",
            Html.Paragraph("How truly an analog stick says where it is. Positions are in per cent of half the range that an axis can say. A departure from a faultless stick is told where chance and the resolution of the axes do not explain it, with 5 % for all such tests of the study together."),
            Html.List(sticks.Conditions.Select(Sentence).Concat(sticks.Reshapings.Select(reshaping => $"Layer {StickWording.Sentence(reshaping)}"))),
            FiguresSection.Of(FigurePart.Sticks, document, figures),
            Measures(sticks),
            Stops(sticks),
            Ranks(sticks),
            Refusals(sticks),
            Html.Details("How each measure is defined, and what it does not tell", Definitions(sticks)));
    }

    private static string Sentence(StickFinding finding) => finding.Faults.Count == 0
        ? $"{finding.Id}: no departure from a faultless stick is told."
        : $"{finding.Id} {string.Join("; ", finding.Faults.Select(fault => StickFaultWording.Fault(finding, fault)))}.";

    private static XElement Measures(StudySticks sticks)
    {
        var table = new HtmlTable(
            $"Measures of each stick. Intervals at 95{NoBreakSpace}% beneath; of one session they hold within it only.",
            ["measure", .. sticks.Conditions.Select(finding => finding.Id)]);
        foreach (var (measure, part) in sticks.Conditions.SelectMany(finding => finding.Measures).Where(result => result.Outcome is StickEstimate).Select(result => (result.Measure, result.Part)).Distinct().Order())
        {
            table.Add(
                new($"{StickWording.Name(measure, part)}, {StickMeasureText.Symbol(StickMeasureText.Of(measure).Unit)}".TrimEnd(' ', ',')),
                [.. sticks.Conditions.Select(finding => Cell(finding.Of(measure, part)))],
                "long");
        }

        return table.Element;
    }

    private static TableCell Cell(StickOutcome? outcome) =>
        outcome is StickEstimate estimate ? new(StickWording.Value(estimate), $"{StickWording.Bounds(estimate)}; {StickWording.Basis(estimate)}") : new("not told");

    private static XElement? Stops(StudySticks sticks)
    {
        var held = sticks.Conditions.Where(finding => finding.Stops.Count > 0).ToList();
        if (held.Count == 0)
        {
            return null;
        }

        var table = new HtmlTable(
            $"Stops of known angle: what each stick says less the true angle, in degrees. Beneath: the angle that it says, and the interval at 95{NoBreakSpace}% of this stop by itself, over sessions where there are several, with the stop's own uncertainty in it.",
            ["true angle, °", .. held.Select(finding => finding.Id)]);
        foreach (var degrees in held.SelectMany(finding => finding.Stops).Select(stop => stop.Degrees).Distinct().Order())
        {
            table.Add(new(Plain(degrees)), [.. held.Select(finding => Cell(finding.Stops.FirstOrDefault(stop => stop.Degrees.Equals(degrees))))], "long");
        }

        return table.Element;
    }

    private static TableCell Cell(StopError? stop) =>
        stop is null ? new("not visited") : new(StickWording.Error(stop), $"says {StickWording.Said(stop)}; {StickWording.Bounds(stop)}; {StickWording.Basis(stop)}");

    private static XElement? Ranks(StudySticks sticks)
    {
        if (sticks.Rankings.Count == 0)
        {
            return null;
        }

        var ids = sticks.Conditions.Select(finding => finding.Id).ToList();
        var table = new HtmlTable("Ranks by measure that the data allow, 1 the best; simultaneous over the pairs of a measure. Sticks of fewer than two sessions are told from none.", ["measure", .. ids]);
        foreach (var ranking in sticks.Rankings)
        {
            table.Add(new(StickWording.Name(ranking.Measure, ranking.Part)), [.. ids.Select(id => Rank(ranking, id))]);
        }

        return table.Element;
    }

    private static TableCell Rank(StickRanking ranking, string id) => ranking.Places.FirstOrDefault(place => place.Id == id) is { } place
        ? place.BestRank == place.WorstRank ? new(Whole(place.BestRank)) : new($"{Whole(place.BestRank)} to {Whole(place.WorstRank)}")
        : new("");

    private static XElement? Refusals(StudySticks sticks)
    {
        var refused = sticks.Conditions.SelectMany(finding => finding.Measures
            .Where(result => result.Outcome is StickRefusal)
            .GroupBy(result => StickRefusalWording.Sentence((StickRefusal)result.Outcome))
            .Select(group => $"{finding.Id}, {string.Join("; ", group.Select(result => StickWording.Name(result.Measure, result.Part)))}: {group.Key}")).ToList();
        return refused.Count == 0 ? null : Html.Details("What the recordings cannot tell, and what to do", Html.List(refused));
    }

    private static XElement Definitions(StudySticks sticks)
    {
        var table = new HtmlTable("Definitions, in short; docs/methods/sticks.md has them in full.", "measure", "definition", "formula", "source", "not told");
        foreach (var measure in sticks.Conditions.SelectMany(finding => finding.Measures).Where(result => result.Outcome is StickEstimate).Select(result => result.Measure).Distinct().Order())
        {
            var text = StickMeasureText.Of(measure);
            table.Add(new(text.Name), [TableCell.Words(text.Definition), TableCell.Words(text.Formula), TableCell.Words(text.Source), TableCell.Words(text.NotTold)]);
        }

        return table.Element;
    }
}
