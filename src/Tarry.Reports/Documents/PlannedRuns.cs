using System.Globalization;
using Tarry.Findings.Plans;

namespace Tarry.Reports.Documents;

/// <summary>What the commands of an order sheet share.</summary>
/// <param name="Study">The study's folder, as the tester names it.</param>
/// <param name="Port">The rig's port.</param>
/// <param name="Response">What answers.</param>
/// <param name="Trials">Trials in each session.</param>
public sealed record PlannedRuns(string Study, string Port, string Response, int Trials)
{
    /// <summary>The command for one step, ready to paste.</summary>
    public string Command(OrderedSitting sitting, OrderedRun run)
    {
        ArgumentNullException.ThrowIfNull(sitting);
        ArgumentNullException.ThrowIfNull(run);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"tarry run {Quoted(Study)} --condition {run.Condition} --sitting {sitting.Sitting} --port {Quoted(Port)} --response {Response} --trials {Trials} --seed {run.Seed}");
    }

    // Double quotes are what every shell of the three systems takes around a path with spaces.
    private static string Quoted(string text) =>
        text.Length > 0 && text.All(character => char.IsLetterOrDigit(character) || character is '/' or '\\' or '.' or ':' or '-' or '_') ? text : $"\"{text}\"";
}
