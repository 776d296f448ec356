using System.Xml.Linq;
using Tarry.Findings;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>The way of a press from contact to sensor: what is alike for all conditions, what differs, what nobody wrote down, and what a frame cap adds.</summary>
internal static class ChainSection
{
    private const string NotStated = "not stated";

    /// <summary>The section, or null where there is no condition.</summary>
    public static XElement? Build(FindingsDocument document)
    {
        if (document.Conditions.Count == 0)
        {
            return null;
        }

        var steps = ChainSteps.All
            .Select(step => (step.Name, Known: document.Conditions.Select(step.Known).ToList()))
            .ToList();
        var shared = steps.Where(step => step.Known[0].Length > 0 && step.Known.All(known => known == step.Known[0])).ToList();
        var unknown = steps.Where(step => step.Known.All(known => known.Length == 0)).Select(step => step.Name).ToList();
        var differing = steps.Except(shared).Where(step => !unknown.Contains(step.Name)).ToList();
        return Html.Section(
            "chain",
            "The chain",
            Html.Paragraph("A press passes contact, device, the wait for the next report slot, link, host, software layer, the wait for the next frame, screen refresh and sensor. Every latency in this report is of this whole way, as far as it was in use, and not of the device alone."),
            shared.Count == 0 ? null : Html.Paragraph($"{(document.Conditions.Count == 1 ? "As stated" : "Alike for every condition")}: {string.Join("; ", shared.Select(step => $"{step.Name}: {step.Known[0]}"))}."),
            unknown.Count == 0 ? null : Html.Paragraph($"Neither the study file nor the sessions state the {Listing.And(unknown)}."),
            Html.List(FrameCaps(document)),
            differing.Count == 0 ? null : Table(document, differing));
    }

    private static IEnumerable<string> FrameCaps(FindingsDocument document)
    {
        var caps = document.Conditions.SelectMany(condition => condition.Chain.FrameCapsHz).Distinct().Order().ToList();
        var unstated = document.Conditions.Where(condition => condition.Chain.FrameCapsHz.Count == 0).Select(condition => condition.Id).ToList();
        foreach (var cap in caps)
        {
            yield return $"A frame cap of {ChainSteps.Rate(cap, "frame")} adds a wait of up to {Plain(Math.Round(1000 / cap, 3))}{NoBreakSpace}ms to a response that is shown with the next frame, and half of that on average where presses keep no step with the frames.";
        }

        if (caps.Count > 0)
        {
            yield return caps.Count == 1 && unstated.Count == 0
                ? "The cap is the same for every condition: the wait is in every mean, and on average it drops out of the differences."
                : "Conditions that ran under other caps, or under none that is stated, differ by this wait as well.";
        }

        if (unstated.Count > 0)
        {
            yield return unstated.Count == document.Conditions.Count
                ? "No session states a frame cap: how much of the latencies is the wait for a frame is not known."
                : $"No session of {Listing.And(unstated)} states a frame cap.";
        }
    }

    private static XElement Table(FindingsDocument document, List<(string Name, List<string> Known)> steps)
    {
        var table = new HtmlTable("Where the chains differ, step by step.", ["condition", .. steps.Select(step => step.Name)]);
        for (var index = 0; index < document.Conditions.Count; index++)
        {
            var condition = document.Conditions[index];
            table.Add(
                new(condition.Id, condition.IsReference ? "reference" : ""),
                [.. steps.Select(step => TableCell.Words(step.Known[index].Length == 0 ? NotStated : step.Known[index]))]);
        }

        return table.Element;
    }
}
