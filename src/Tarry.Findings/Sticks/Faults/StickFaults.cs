using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Comparisons;

namespace Tarry.Findings.Sticks.Faults;

/// <summary>Tells faults from chance: one test a measure, part and condition, held together by Holm's adjustment, so that a study of faultless sticks is accused of anything in at most one of twenty.</summary>
internal static class StickFaults
{
    private const double ToldBelow = 0.05;

    private static readonly Dictionary<StickMeasure, StickFaultKind> Kinds = new()
    {
        [StickMeasure.CentreOffset] = StickFaultKind.OffCentre,
        [StickMeasure.CentreDrift] = StickFaultKind.Drifts,
        [StickMeasure.DistinctSteps] = StickFaultKind.CoarseSteps,
        [StickMeasure.ReturnLag] = StickFaultKind.ReturnsShort,
        [StickMeasure.ReleaseOvershoot] = StickFaultKind.Overshoots,
        [StickMeasure.StepOvershoot] = StickFaultKind.Overshoots,
        [StickMeasure.RadialDeviation] = StickFaultKind.OutOfRound,
        [StickMeasure.GainDifference] = StickFaultKind.UnequalGain,
        [StickMeasure.NonOrthogonality] = StickFaultKind.NotOrthogonal,
        [StickMeasure.Squareness] = StickFaultKind.Square,
        [StickMeasure.Hysteresis] = StickFaultKind.Hysteresis,
        [StickMeasure.AngularError] = StickFaultKind.AngularError,
        [StickMeasure.AngularRotation] = StickFaultKind.Rotated,
        [StickMeasure.NonLinearityBestFit] = StickFaultKind.NotLinear,
        [StickMeasure.DifferentialNonLinearity] = StickFaultKind.UnevenSteps,
        [StickMeasure.InnerDeadZone] = StickFaultKind.DeadZone,
        [StickMeasure.OuterSaturation] = StickFaultKind.Saturation,
        [StickMeasure.Crosstalk] = StickFaultKind.Crosstalk,
    };

    /// <summary>The faults of each condition.</summary>
    /// <param name="conditions">By condition, all that is known of it.</param>
    public static IReadOnlyList<IReadOnlyList<StickFault>> Of(IReadOnlyList<IReadOnlyList<StickEvidence>> conditions)
    {
        var tests = conditions
            .SelectMany((evidence, condition) => evidence.Where(IsTested).Select(one => (Condition: condition, Evidence: one)))
            .ToList();
        var adjusted = HolmAdjustment.Adjust(tests.Select(test => Math.Min(1, test.Evidence.FaultP())).ToArray());
        return [.. conditions.Select((_, condition) => (IReadOnlyList<StickFault>)
        [
            .. tests.Select((test, index) => (test, P: adjusted[index]))
                .Where(entry => entry.test.Condition == condition && entry.P < ToldBelow)
                .Select(entry => new StickFault(Kinds[entry.test.Evidence.Measure], entry.test.Evidence.Measure, entry.test.Evidence.Part, entry.P, entry.test.Evidence.Allowance)),
        ])];
    }

    // A distance is never below 0 and has no test of its own: its coordinates have.
    private static bool IsTested(StickEvidence evidence) =>
        Kinds.ContainsKey(evidence.Measure) && evidence.Method is (StickMethodName.WithinSession or StickMethodName.OverSessions);
}
