using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Findings.Quality;

namespace Tarry.Reports.Documents;

/// <summary>What the reader must know beside the results, by kind.</summary>
internal static class CautionsSection
{
    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        var cautions = document.Cautions.Concat(document.Conditions.SelectMany(condition => condition.Cautions)).ToList();
        if (cautions.Count == 0)
        {
            return Html.Section("cautions", "Cautions", Html.Paragraph("The checks of this version raised none."));
        }

        var list = new XElement("dl");
        foreach (var group in cautions.GroupBy(caution => caution.Kind).OrderBy(group => group.Key))
        {
            list.Add(
                new XElement("dt", Label(group.Key)),
                group.Select(caution => new XElement("dd", Wording.PlainText.Clean(CautionWording.Sentence(caution)))));
        }

        return Html.Section("cautions", "Cautions", list);
    }

    private static string Label(CautionKind kind)
    {
        var words = CautionWording.Key(kind).Replace('-', ' ');
        return char.ToUpperInvariant(words[0]) + words[1..];
    }
}
