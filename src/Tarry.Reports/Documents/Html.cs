using System.Xml.Linq;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>The few elements that the sections of the report are made of. Text is cleaned here and encoded when it is written.</summary>
internal static class Html
{
    /// <summary>A section under a heading, which names it for assistive technology.</summary>
    public static XElement Section(string id, string heading, params ReadOnlySpan<object?> content)
    {
        var section = new XElement(
            "section",
            new XAttribute("id", id),
            new XAttribute("aria-labelledby", $"{id}-heading"),
            new XElement("h2", new XAttribute("id", $"{id}-heading"), heading));
        foreach (var item in content)
        {
            section.Add(item);
        }

        return section;
    }

    /// <summary>A paragraph.</summary>
    public static XElement Paragraph(string text) => new("p", PlainText.Clean(text));

    /// <summary>A third-level heading.</summary>
    public static XElement Subheading(string text) => new("h3", PlainText.Clean(text));

    /// <summary>A list of sentences.</summary>
    public static XElement List(IEnumerable<string> items) => new("ul", items.Select(item => new XElement("li", PlainText.Clean(item))));

    /// <summary>Something that opens on demand; the style sheet opens it in print.</summary>
    public static XElement Details(string summary, params IReadOnlyList<object> content) =>
        new("details", new XElement("summary", PlainText.Clean(summary)), content);
}
