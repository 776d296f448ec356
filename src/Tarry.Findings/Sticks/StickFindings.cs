using Tarry.Findings.Sticks.Faults;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rankings;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Findings.Sticks.Reshaping;
using Tarry.Findings.Sticks.Rest;
using Tarry.Findings.Sticks.Rim;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Sticks;

/// <summary>From recordings of sticks to all that they say.</summary>
public static class StickFindings
{
    /// <summary>The findings; null where there is no recording.</summary>
    /// <param name="conditions">The conditions of the study: their order, and the layers that tell which pairs to compare.</param>
    /// <param name="sessions">The recordings, of any procedures.</param>
    public static StudySticks? Of(IReadOnlyList<ConditionEntry> conditions, IReadOnlyList<StickSession> sessions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentNullException.ThrowIfNull(sessions);
        if (sessions.Count == 0)
        {
            return null;
        }

        var order = conditions.Select((condition, index) => (condition.Id, index)).ToDictionary(entry => entry.Id, entry => entry.index, StringComparer.Ordinal);
        List<StickCondition> present =
        [
            .. sessions.GroupBy(session => session.Record.Key.Condition)
                .OrderBy(group => order.GetValueOrDefault(group.Key, int.MaxValue)).ThenBy(group => group.Key, StringComparer.Ordinal)
                .Select(group => new StickCondition(group.Key, [.. group.OrderBy(session => session.Record.Key)])),
        ];
        var evidence = Evidence(present);
        var faults = StickFaults.Of(evidence);
        return new StudySticks(
            [.. present.Select((condition, index) => Finding(condition, evidence[index], faults[index]))],
            StickRankings.Of([.. present.Select((condition, index) => (condition.Id, evidence[index]))]),
            ReshapingFindings.Of(conditions, present));
    }

    private static List<IReadOnlyList<StickEvidence>> Evidence(List<StickCondition> conditions)
    {
        var found = conditions.Select(_ => new List<StickEvidence>()).ToList();
        foreach (var (measure, part) in conditions.SelectMany(condition => condition.Known).Distinct().Order())
        {
            var estimates = StickEstimates.Of([.. conditions.Select(condition => condition.Of(measure, part))]);
            for (var index = 0; index < conditions.Count; index++)
            {
                if (estimates[index] is { } evidence)
                {
                    found[index].Add(evidence with { StepPercent = StepPercent(conditions[index], part) });
                }
            }
        }

        foreach (var all in found)
        {
            StickEvidence? Offset(StickPart part) => all.Find(evidence => evidence.Measure == StickMeasure.CentreOffset && evidence.Part == part);
            all.InsertRange(0, StickEstimates.Distance(Offset(StickPart.X), Offset(StickPart.Y)) is { } distance ? [distance] : []);
        }

        return [.. found.Select(all => (IReadOnlyList<StickEvidence>)all)];
    }

    private static double StepPercent(StickCondition condition, StickPart part)
    {
        var recording = condition.Recordings[0];
        return part == StickPart.Y ? recording.Y.Step : recording.X.Step;
    }

    private static StickFinding Finding(StickCondition condition, IReadOnlyList<StickEvidence> evidence, IReadOnlyList<StickFault> faults)
    {
        var estimated = evidence.Select(one => new StickResult(one.Measure, one.Part, StickEstimates.Shown(one))).ToList();
        var refused = condition.Known
            .Where(known => !estimated.Exists(result => result.Measure == known.Measure && result.Part == known.Part))
            .Select(known => new StickResult(known.Measure, known.Part, condition.Refusal(known.Measure, known.Part)))
            .ToList();
        var silent = Enum.GetValues<StickMeasure>()
            .Where(measure => !estimated.Concat(refused).Any(result => result.Measure == measure))
            .Select(measure => new StickResult(measure, StickPart.Whole, new StickRefusal(StickRefusalReason.NotRecorded)));
        return new StickFinding
        {
            Id = condition.Id,
            Sessions = [.. condition.Recordings.Select(recording => new StickSessionFinding(recording.Key, recording.Setup.Procedure, recording.Setup.Source, recording.Count, recording.DurationMs / 1_000))],
            Measures = [.. estimated.Concat(refused).Concat(silent).OrderBy(result => result.Measure).ThenBy(result => result.Part)],
            Faults = faults,
            StepX = Known(condition.Recordings[0].X.Step),
            StepY = Known(condition.Recordings[0].Y.Step),
            DeadZone = RimSticking.Form(condition, faults),
            Rose = Roses.Of(condition.Rims),
            Clouds = condition.Clouds,
            Spectra = condition.Spectra,
            Lines = ToldLine.Of(condition.Spectra),
            Returns = condition.Returns,
            Stops = condition.Stops,
            NonLinearity = condition.Curves,
        };
    }

    // An axis of which no step is known has one of 0.
    private static double? Known(double step) => step > 0 ? step : null;
}
