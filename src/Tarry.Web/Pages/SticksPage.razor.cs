using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Reports.Documents;
using Tarry.Reports.Figures;
using Tarry.Web.Desk;

namespace Tarry.Web.Pages;

/// <summary>How truly the study's sticks say where they are: as the report has it.</summary>
public sealed partial class SticksPage : StudyPage
{
    private XElement? section;

    /// <inheritdoc/>
    protected override void OnFound(FindingsDocument document)
    {
        section = SticksSection.Build(document, StudyFigures.Of(document));
        section?.Element("h2")?.SetValue("What the recordings say");
    }
}
