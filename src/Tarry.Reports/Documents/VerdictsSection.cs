using System.Xml.Linq;
using Tarry.Findings;

namespace Tarry.Reports.Documents;

/// <summary>What is told apart, what does not matter, and what the undecided would take.</summary>
internal static class VerdictsSection
{
    /// <summary>The section.</summary>
    public static XElement Build(FindingsDocument document) =>
        Html.Section("verdicts", "Verdicts", ReferenceSummary.Of(document), PairsSummary.Of(document));
}
