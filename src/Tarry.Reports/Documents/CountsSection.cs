using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using Tarry.Reports.Wording;
using Tarry.Studies.Sessions;

namespace Tarry.Reports.Documents;

/// <summary>What became of every trial: by condition, by session and in all.</summary>
public static class CountsSection
{
    private static readonly string[] Outcomes = ["captured", "used", "missed", "early", "refused", "excluded"];

    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        var table = new HtmlTable("Trials by condition.", ["condition", .. Outcomes]);
        foreach (var condition in document.Conditions)
        {
            table.Add(condition.Id, Cells(condition.Counts));
        }

        var inNone = Less(document.Counts, Sum(document.Conditions.Select(condition => condition.Counts)));
        if (inNone.Captured > 0)
        {
            table.Add("in no condition", Cells(inNone));
        }

        table.Add("in all", Cells(document.Counts), "total");
        return Html.Section(
            "counts",
            "Counts",
            Html.Paragraph("Captured = used + missed + early + refused + excluded; every trial is in exactly one. Missed: no response before the time-out. Early: a response before it was physically possible. Refused: a bad frame or row. Excluded: set aside by the study file."),
            table.Element,
            document.Conditions.Any(condition => condition.Sessions.Count > 0) ? Html.Details("Trials by session", [Sessions(document)]) : null);
    }

    private static XElement Sessions(FindingsDocument document)
    {
        var table = new HtmlTable("Trials by session.", ["session", .. Outcomes]);
        foreach (var condition in document.Conditions)
        {
            foreach (var session in condition.Sessions)
            {
                table.Add(new(session.Key.ToString(), Standing(session)), Cells(session.Counts));
            }

            var inNone = Less(condition.Counts, Sum(condition.Sessions.Select(session => session.Counts)));
            if (inNone.Captured > 0)
            {
                table.Add($"{condition.Id}, in no session", Cells(inNone));
            }
        }

        return table.Element;
    }

    private static string Standing(SessionFinding session) =>
        session.Counts.Used == 0 ? "nothing of it is used" : session.InPool ? "" : "not in the pooled variance";

    private static IReadOnlyList<TableCell> Cells(SessionCounts counts) =>
        [.. new[] { counts.Captured, counts.Used, counts.Missed, counts.Early, counts.Refused, counts.Excluded }.Select(count => new TableCell(Numbers.Whole(count)))];

    private static SessionCounts Sum(IEnumerable<SessionCounts> counts) => counts.Aggregate(default(SessionCounts), (sum, next) => sum + next);

    private static SessionCounts Less(SessionCounts whole, SessionCounts part)
    {
        var rest = new SessionCounts(whole.Used - part.Used, whole.Missed - part.Missed, whole.Early - part.Early, whole.Refused - part.Refused, whole.Excluded - part.Excluded);
        return rest is { Used: >= 0, Missed: >= 0, Early: >= 0, Refused: >= 0, Excluded: >= 0 }
            ? rest
            : throw new ArgumentException($"The counts do not add up: {part} in parts of {whole}. A whole is never less than its parts; find the findings' mistake before a report is written.");
    }
}
