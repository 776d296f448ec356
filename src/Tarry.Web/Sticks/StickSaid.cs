using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Rig.Sticks;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Web.Sticks;

/// <summary>What a recording that was just sealed says by itself.</summary>
/// <param name="Positions">Positions sealed.</param>
/// <param name="RefusedLines">Lines of the recording that could not be read.</param>
/// <param name="Events">What happened meanwhile.</param>
/// <param name="Lacks">What its procedure asks and it has not; none where it is accepted.</param>
/// <param name="Estimates">What it tells, in the order of the measures.</param>
/// <param name="Refusals">What it cannot tell though its procedure is one that can: the measures, by the sentence that says why and what to do.</param>
public sealed record StickSaid(
    int Positions, long RefusedLines, IReadOnlyList<string> Events, IReadOnlyList<string> Lacks, IReadOnlyList<StickResult> Estimates, IReadOnlyList<(string Sentence, IReadOnlyList<StickResult> Measures)> Refusals)
{
    /// <summary>From the session alone: what further sittings add is on the page Sticks.</summary>
    /// <param name="conditions">The study's conditions.</param>
    /// <param name="session">The session.</param>
    public static StickSaid Of(IReadOnlyList<ConditionEntry> conditions, StickSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var measures = StickFindings.Of(conditions, [session])!.Conditions[0].Measures;
        return new StickSaid(
            session.Samples.Count,
            session.Record.RefusedTotal,
            session.Record.Events,
            StickAcceptance.Lacks(session),
            [.. measures.Where(result => result.Outcome is StickEstimate)],
            [
                .. measures
                    .Where(result => result.Outcome is StickRefusal { Reason: not StickRefusalReason.NotRecorded })
                    .GroupBy(result => StickRefusalWording.Sentence((StickRefusal)result.Outcome))
                    .Select(group => (group.Key, (IReadOnlyList<StickResult>)[.. group])),
            ]);
    }
}
