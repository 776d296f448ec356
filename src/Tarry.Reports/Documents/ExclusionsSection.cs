using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Conditions;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>What the study file sets aside, and why.</summary>
internal static class ExclusionsSection
{
    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        var lines = document.Conditions
            .SelectMany(condition => condition.Sessions)
            .Where(session => session.Counts.Excluded > 0 || session.ExclusionReasons.Count > 0)
            .OrderBy(session => session.Key)
            .Select(Line)
            .Concat((document.SetAside ?? []).Select(recording => $"{recording.Session}: the whole recording set aside: {recording.Reason}."))
            .ToList();
        return Html.Section(
            "exclusions",
            "Exclusions",
            lines.Count == 0 ? Html.Paragraph("Nothing was set aside.") : Html.List(lines));
    }

    internal static string Line(SessionFinding session)
    {
        var (excluded, captured) = (session.Counts.Excluded, session.Counts.Captured);
        var share = excluded == captured && captured > 1
            ? $"all {Count(captured, "trial")}"
            : $"{Whole(excluded)} of {Count(captured, "trial")}";
        var reasons = session.ExclusionReasons.Count == 0 ? "no reason is given" : string.Join("; ", session.ExclusionReasons);
        return $"{session.Key}: {share} set aside: {reasons}.";
    }
}
