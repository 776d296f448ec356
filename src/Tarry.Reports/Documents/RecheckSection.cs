using System.Globalization;
using System.Xml.Linq;
using Tarry.Findings;

namespace Tarry.Reports.Documents;

/// <summary>How a reader checks all of this, with Tarry and without.</summary>
internal static class RecheckSection
{
    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        var seed = document.Seed.ToString(CultureInfo.InvariantCulture);
        return Html.Section(
            "recheck",
            "How to recheck",
            Html.Subheading("With the data package, without Tarry"),
            new XElement(
                "ol",
                Step("datapackage.json", " of the package states the SHA-256 of each of its files."),
                Step("Rscript recheck.R", " recomputes the means with their intervals and the differences from the reference from every trial, with R alone."),
                Step("python3 recheck.py", " does the same with Python's standard library alone."),
                document.Sticks is null ? null : Step("Rscript recheck-sticks.R", " recomputes from every position of the sticks the centre offset, the noise at rest, the distinct steps, and of turns the circle and the radial deviation, with R alone."),
                document.Sticks is null ? null : Step("python3 recheck-sticks.py", " does the same with NumPy and SciPy.")),
            Html.Subheading("With the study folder and Tarry"),
            new XElement(
                "ol",
                Step("tarry check STUDY", " reads every sealed session and compares it with the SHA-256 in manifest.json."),
                Step($"tarry analyse STUDY --json --seed {seed}", $" prints the findings that this report is drawn from, the same as findings.json beside it. Version used: {document.Version}."),
                Step("tarry export STUDY --format datapackage --out package", " writes the data package: every trial, report and position of a stick, one a row, with units in the column names, and the scripts."),
                Step($"tarry report STUDY --figures --seed {seed}", " writes this report and its figures again.")));
    }

    private static XElement Step(string command, string what) =>
        new("li", new XElement("code", command), Wording.PlainText.Clean(what));
}
