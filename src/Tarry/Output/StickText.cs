using Spectre.Console;
using Tarry.Findings;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rankings;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>How truly sticks say where they are, as tables and sentences for a terminal.</summary>
internal static class StickText
{
    private static readonly StickMeasure[] Ranked =
    [
        StickMeasure.CentreOffset, StickMeasure.ReturnScatter, StickMeasure.RadialDeviation, StickMeasure.AngularError, StickMeasure.EffectiveResolution,
    ];

    public static void Write(FindingsDocument document, Terminal terminal)
    {
        if (document.Sticks is not { } sticks)
        {
            return;
        }

        foreach (var finding in sticks.Conditions)
        {
            Write(finding, terminal);
        }

        foreach (var ranking in sticks.Rankings.Where(ranking => Ranked.Contains(ranking.Measure)))
        {
            terminal.Out.WriteLine(Sentence(ranking));
        }

        foreach (var reshaping in sticks.Reshapings)
        {
            terminal.Out.WriteLine($"layer {StickWording.Sentence(reshaping)}");
        }
    }

    private static void Write(StickFinding finding, Terminal terminal)
    {
        terminal.Out.WriteLine(Invariant($"Stick of {finding.Id}: {Counted.Of(finding.Sessions.Count, "recording")}, {Numbers.Whole(finding.Sessions.Sum(session => (long)session.Positions))} positions (95 % intervals; % of half the range)"));
        var table = FittedTable.New("measure", "value", "interval", "unit", "rests on");
        foreach (var result in finding.Measures)
        {
            if (result.Outcome is StickEstimate estimate)
            {
                table.AddRow(FittedTable.Cells(
                    StickWording.Name(result.Measure, result.Part),
                    StickWording.Value(estimate),
                    StickWording.Bounds(estimate),
                    StickMeasureText.Symbol(StickMeasureText.Of(result.Measure).Unit),
                    StickWording.Basis(estimate)));
            }
        }

        FittedTable.Write(terminal, table);
        WriteStops(finding, terminal);
        foreach (var line in finding.Lines)
        {
            terminal.Out.WriteLine($"tone in the noise of {StickWording.Part(line.Part)} at {StickWording.Line(line)}");
        }

        foreach (var group in finding.Measures.Where(result => result.Outcome is StickRefusal).GroupBy(result => StickRefusalWording.Sentence((StickRefusal)result.Outcome)))
        {
            terminal.Out.WriteLine($"not told ({string.Join("; ", group.Select(result => StickWording.Name(result.Measure, result.Part)))}): {group.Key}");
        }

        terminal.Out.WriteLine(finding.Faults.Count == 0
            ? $"{finding.Id}: no departure from a faultless stick is told."
            : $"{finding.Id} {string.Join("; ", finding.Faults.Select(fault => StickFaultWording.Fault(finding, fault)))}.");
        terminal.Out.WriteLine();
    }

    private static void WriteStops(StickFinding finding, Terminal terminal)
    {
        if (finding.Stops.Count == 0)
        {
            return;
        }

        var table = FittedTable.New("true angle, °", "said, °", "error, °", "interval", "rests on");
        foreach (var stop in finding.Stops)
        {
            table.AddRow(FittedTable.Cells(Numbers.Plain(stop.Degrees), StickWording.Said(stop), StickWording.Error(stop), StickWording.Bounds(stop), StickWording.Basis(stop)));
        }

        FittedTable.Write(terminal, table);
    }

    private static string Sentence(StickRanking ranking)
    {
        var places = ranking.Places.Select(place => place.BestRank == place.WorstRank ? Invariant($"{place.Id} {place.BestRank}") : Invariant($"{place.Id} {place.BestRank}-{place.WorstRank}"));
        return $"ranks by {StickWording.Name(ranking.Measure, ranking.Part)}: {string.Join(", ", places)}";
    }
}
