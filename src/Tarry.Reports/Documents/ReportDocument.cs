using System.Reflection;
using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>The report: one HTML file that needs no script and asks nothing of any machine.</summary>
public static class ReportDocument
{
    private const string ContentSecurityPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

    /// <summary>The report as HTML, in syntax that XML readers take as well; the same bytes for the same findings.</summary>
    /// <exception cref="ArgumentException">The counts of the parts exceed those of the whole.</exception>
    /// <param name="document">The findings.</param>
    /// <param name="preface">What the author puts before it; null for nothing.</param>
    public static string Write(FindingsDocument document, ReportPreface? preface = null)
    {
        ArgumentNullException.ThrowIfNull(document);
        var title = PlainText.Clean(string.IsNullOrWhiteSpace(preface?.Title) ? document.Title : preface.Title.Trim());
        var html = new XElement(
            "html",
            new XAttribute("lang", "en"),
            new XElement(
                "head",
                new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement("meta", new XAttribute("http-equiv", "Content-Security-Policy"), new XAttribute("content", ContentSecurityPolicy)),
                new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
                new XElement("meta", new XAttribute("name", "color-scheme"), new XAttribute("content", "light dark")),
                new XElement("title", $"{title}: input latency"),
                new XElement("style", StyleSheet())),
            new XElement("body", Header(document, title), Main(document, preface), Footer(document)));
        return "<!DOCTYPE html>\n" + html.ToString(SaveOptions.DisableFormatting) + "\n";
    }

    private static XElement Header(FindingsDocument document, string title)
    {
        var reference = document.Reference is { } id ? $"reference {id}" : "no reference";
        return new(
            "header",
            new XElement("h1", title),
            Html.Paragraph($"Input latency of {Numbers.Count(document.Conditions.Count, "condition")}; {reference}; margin {Numbers.Milliseconds(document.MarginMs)}; {Numbers.Count(document.Counts.Captured, "trial")} captured."));
    }

    private static XElement Main(FindingsDocument document, ReportPreface? preface)
    {
        var figures = StudyFigures.Of(document).Where(figure => preface?.LeftOut?.Contains(figure.Name) != true).ToList();
        XElement?[] sections =
        [
            NotesSection.Build(preface?.Notes),
            SummarySection.Build(document),
            FiguresSection.Build(document, figures),
            document.Conditions.Count == 0 ? null : VerdictsSection.Build(document),
            document.Conditions.Count == 0 ? null : ResultsSection.Build(document),
            DeviceSection.Build(document, figures),
            DifferencesSection.Build(document),
            LayersSection.Build(document),
            PlaySection.Build(document),
            SticksSection.Build(document, figures),
            ChainSection.Build(document),
            BudgetSection.Build(document),
            CountsSection.Build(document),
            CautionsSection.Build(document),
            ExclusionsSection.Build(document),
            MethodsSection.Build(document),
            RecheckSection.Build(document),
        ];
        var present = sections.OfType<XElement>().ToList();
        var contents = new XElement(
            "nav",
            new XAttribute("aria-label", "Contents"),
            new XElement("ul", present.Select(section => new XElement(
                "li",
                new XElement("a", new XAttribute("href", "#" + section.Attribute("id")!.Value), section.Element("h2")!.Value)))));
        return new("main", contents, present);
    }

    private static XElement Footer(FindingsDocument document) =>
        new("footer", Html.Paragraph($"Written by Tarry {document.Version}, seed {document.Seed}. Drawn from findings.json beside it."));

    private static string StyleSheet()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("report.css")
            ?? throw new InvalidOperationException("The style sheet report.css is missing from the program; build it again.");
        using var reader = new StreamReader(stream);
        return $"{FigureStyleSheet.ForPage()}\n{reader.ReadToEnd()}";
    }
}
