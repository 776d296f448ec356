using Tarry.Imports;
using Tarry.Imports.DelimitedText;
using Tarry.Rig.Sticks;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>What an import read and refused, in words.</summary>
internal static class ImportText
{
    private const int ShownPlaces = 10;

    /// <summary>Says whether a recording of a stick is good enough for its procedure; it is kept in either case.</summary>
    public static void Judge(StickSession session, Terminal terminal)
    {
        var lacks = StickAcceptance.Lacks(session);
        if (lacks.Count == 0)
        {
            terminal.Out.WriteLine($"{session.Record.Key}: accepted for its procedure.");
        }

        foreach (var lack in lacks)
        {
            terminal.Error.WriteLine($"{session.Record.Key}: not accepted for its procedure: {lack}");
        }

        if (lacks.Count > 0)
        {
            terminal.Error.WriteLine("  what to do: it is kept all the same; record the procedure again, into another sitting.");
        }
    }

    public static void Write(ImportPlan plan, Terminal terminal, bool dryRun, bool explain)
    {
        var row = plan.StickSessions.Count > 0 ? "position" : plan.ReportSessions.Count > 0 ? "report" : plan.Record.Format == DelimitedTextImport.Format ? "row" : "trial";
        terminal.Out.WriteLine(Invariant(
            $"{plan.Record.FileName}: {(dryRun ? "would keep" : "kept")} {plan.Record.RowsKept} of {Counted.Of(row == "trial" ? plan.Record.RowsRead - plan.Record.RefusedUnassigned : plan.Record.RowsRead, row)} in {Counted.Of(plan.Keys.Count(), "session")}, {Counted.Of(plan.NewConditions.Count, "new condition")}."));
        if (explain)
        {
            foreach (var note in plan.Notes)
            {
                terminal.Out.WriteLine($"  {note}");
            }

            foreach (var session in plan.Sessions)
            {
                terminal.Out.WriteLine(Invariant($"  {session.Record.Key}: {Counted.Of(session.Trials.Count, "trial")}"));
            }

            foreach (var session in plan.StickSessions)
            {
                terminal.Out.WriteLine(Invariant($"  {session.Record.Key}: {Counted.Of(session.Samples.Count, "position")}, x {session.Setup.X.Minimum}..{session.Setup.X.Maximum}, y {session.Setup.Y.Minimum}..{session.Setup.Y.Maximum}"));
            }

            foreach (var session in plan.ReportSessions)
            {
                terminal.Out.WriteLine(Invariant($"  {session.Record.Key}: {Counted.Of(session.Reports.Count, "report")} of {session.Stream.Device}, {Counted.Of(session.Stream.Fields.Count, "field")}"));
            }
        }

        foreach (var session in plan.StickSessions)
        {
            Judge(session, terminal);
        }

        foreach (var caution in plan.Cautions)
        {
            terminal.Error.WriteLine($"{plan.Record.FileName}: {caution}");
        }

        var refused = plan.Record.RefusedTotal;
        if (refused == 0)
        {
            return;
        }

        terminal.Error.WriteLine(Invariant($"{plan.Record.FileName}: refused {(row is "row" or "position" ? Counted.Of(refused, row) : row == "report" ? Counted.Of(refused, "packet") : Invariant($"in all {refused}"))}:"));
        foreach (var (reason, count) in plan.Record.RefusedByReason)
        {
            terminal.Error.WriteLine(Invariant($"  {count} x {reason}"));
        }

        foreach (var item in plan.Record.Refused.Take(ShownPlaces))
        {
            terminal.Error.WriteLine($"  {item.Place}: {item.Reason}");
        }

        if (refused > ShownPlaces)
        {
            terminal.Error.WriteLine(Invariant($"  and {refused - ShownPlaces} more; the study's imports folder lists the first 1,000."));
        }
    }
}
