using System.Globalization;
using System.Xml.Linq;
using Tarry.Findings;

namespace Tarry.Reports.Documents;

/// <summary>How a reader with the study folder checks all of this.</summary>
internal static class RecheckSection
{
    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document)
    {
        var seed = document.Seed.ToString(CultureInfo.InvariantCulture);
        return Html.Section(
            "recheck",
            "How to recheck",
            new XElement(
                "ol",
                Step("tarry check STUDY", " reads every sealed session and compares it with the SHA-256 in manifest.json."),
                Step("tarry analyse STUDY --json", $" prints the findings that this report is drawn from, the same as findings.json beside it: version {document.Version} with seed {seed} gives the same bytes on every machine."),
                Step("tarry export STUDY --format csv", " writes every trial, one a row, with units in the column names, for any other program."),
                Step("tarry report STUDY", " writes this report again.")));
    }

    private static XElement Step(string command, string what) =>
        new("li", new XElement("code", command), Wording.PlainText.Clean(what));
}
