using System.Reflection;
using System.Xml.Linq;
using Tarry.Findings.Plans;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>The order of the runs to print and take to the bench: a page a sitting, boxes to tick, room to write, and the care that the step asks for.</summary>
public static class OrderSheet
{
    /// <summary>The sheet as HTML, in syntax that XML readers take as well; the same bytes for the same plan.</summary>
    public static string Write(StudyPlan plan, IReadOnlyList<OrderedSitting> order, PlannedRuns runs)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(runs);
        var title = PlainText.Clean($"Order of runs: {plan.Title}");
        var html = new XElement(
            "html",
            new XAttribute("lang", "en"),
            new XElement(
                "head",
                new XElement("meta", new XAttribute("charset", "utf-8")),
                new XElement("meta", new XAttribute("http-equiv", "Content-Security-Policy"), new XAttribute("content", "default-src 'none'; style-src 'unsafe-inline'")),
                new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
                new XElement("meta", new XAttribute("name", "color-scheme"), new XAttribute("content", "light dark")),
                new XElement("title", title),
                new XElement("style", StyleSheet())),
            new XElement(
                "body",
                new XElement("header", new XElement("h1", title), Html.Paragraph($"{Numbers.Count(order.Count, "sitting")}, {Numbers.Count(plan.Conditions.Count, "condition")} in each, {Numbers.Count(runs.Trials, "trial")} a session. Run them in this order: it was drawn so that warm-up, battery and the run before fall on all conditions alike.")),
                new XElement("main", order.Select(sitting => Page(plan, sitting, runs)))));
        return "<!DOCTYPE html>\n" + html.ToString(SaveOptions.DisableFormatting) + "\n";
    }

    private static XElement Page(StudyPlan plan, OrderedSitting sitting, PlannedRuns runs)
    {
        var id = $"sheet-{sitting.Sitting}";
        return new(
            "section",
            new XAttribute("aria-labelledby", id),
            new XElement("h2", new XAttribute("id", id), sitting.Sitting),
            new XElement("p", new XAttribute("class", "blank"), "Date and time:"),
            new XElement("p", new XAttribute("class", "blank"), "Host, application, frame cap, refresh rate:"),
            new XElement("p", new XAttribute("class", "blank"), "Room, batteries, anything odd:"),
            Html.Subheading("Before you wire"),
            Html.List(BenchCare.Sentences),
            Html.Subheading("Runs"),
            new XElement("ol", sitting.Runs.Select(run => Step(plan, sitting, run, runs))),
            new XElement("p", new XAttribute("class", "blank"), "After the last run, what was seen:"));
    }

    private static XElement Step(StudyPlan plan, OrderedSitting sitting, OrderedRun run, PlannedRuns runs) => new(
        "li",
        new XElement("p", new XElement("span", new XAttribute("class", "box"), "\u2610"), " ", new XElement("strong", run.Condition), run.Condition == plan.Reference ? " (reference)" : null),
        new XElement("p", new XElement("code", PlainText.Clean(runs.Command(sitting, run)))),
        new XElement("p", new XAttribute("class", "blank"), "Seen:"));

    private static string StyleSheet()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("sheet.css")
            ?? throw new InvalidOperationException("The style sheet sheet.css is missing from the program; build it again.");
        using var reader = new StreamReader(stream);
        return $":root{{{Palette.Properties(dark: false)}}}@media screen and (prefers-color-scheme:dark){{:root{{{Palette.Properties(dark: true)}}}}}\n{reader.ReadToEnd()}";
    }
}
