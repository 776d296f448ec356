using Tarry.Rig.Runs;
using Tarry.Studies.Calibrations;
using static System.FormattableString;

namespace Tarry.Rig.Proofs;

/// <summary>Holds what was found against the limits.</summary>
internal static class ProofJudgement
{
    private const string Practice = "common practice, no published source";

    public static IReadOnlyList<ProofPoint> Of(
        ProofRequest request, LoopBack loop, RunResult run, ThresholdRange? thresholds, RigCalibration? calibration, RigCalibration? earlier)
    {
        var points = new List<ProofPoint> { Answered(loop) };
        if (calibration is not null)
        {
            var wire = request is { Response: "edge", ThroughActuator: false };
            points.Add(OwnDelay(calibration, wire));
            points.Add(Jitter(loop, calibration, wire));
        }

        points.Add(Edges(loop));
        points.Add(Threshold(request, thresholds));
        points.Add(Clock(loop));
        points.Add(LostTrials(run));
        points.Add(BadFrames(run.Final.Health));
        points.Add(Restarts(run.Final.Health));
        if (calibration is not null && earlier is not null)
        {
            points.Add(Agreement(calibration, earlier));
        }

        return points;
    }

    private static ProofPoint Point(string name, bool? passed, FormattableString found, FormattableString limit, string basis, string remedy) =>
        new(name, passed, Invariant(found), Invariant(limit), basis, passed == false ? remedy : null);

    private static ProofPoint Answered(LoopBack loop) => Point(
        "loop-back",
        loop.Responses == loop.Trials,
        $"{loop.Responses} of {loop.Trials} presses answered, {loop.Missed} missed, {loop.Early} early",
        $"every press",
        "a wire misses nothing",
        "Wire the press output to the response input (or its LED to the sensor); with --falling if the loop pulls the input low.");

    private static ProofPoint OwnDelay(RigCalibration found, bool wire) => Point(
        "own delay",
        found.OwnDelayUs <= (wire ? ProofLimits.WireDelayUs : ProofLimits.SlowDelayUs),
        $"{found.OwnDelayUs:0.00} us, standard uncertainty {found.OwnDelayStandardUncertaintyUs:0.00} us",
        $"at most {(wire ? ProofLimits.WireDelayUs : ProofLimits.SlowDelayUs)} us",
        wire ? "the firmware in emulation shows under 0.5 us; ten times that is a fault" : "usual optocouplers and phototransistors, from memory",
        wire ? "Take out whatever is in the wire." : "Use a faster sensor or optocoupler, or a smaller load resistor.");

    private static ProofPoint Jitter(LoopBack loop, RigCalibration found, bool wire)
    {
        var limit = (wire ? ProofLimits.WireJitterUs : ProofLimits.SlowJitterUs) + (1e6 / found.TickHz);
        return Point(
            "jitter",
            found.JitterUs <= limit,
            $"sd {found.JitterUs:0.00} us, from {loop.LeastUs:0.00} to {loop.GreatestUs:0.00} us",
            $"sd at most {limit:0.0} us",
            $"{Practice}; one tick is added",
            "Look for a noisy supply, a loose wire, light from elsewhere, or a threshold near the dark or bright level.");
    }

    private static ProofPoint Edges(LoopBack loop) => Point(
        "single edges",
        loop.WithMoreEdges <= ProofLimits.BounceShare * loop.Trials,
        $"{loop.WithMoreEdges} of {loop.Trials} with more than one edge",
        $"at most {100 * ProofLimits.BounceShare} %",
        $"{Practice}; a comparator without hysteresis gives some",
        "Shorten the wires, join the grounds, or move the threshold away from the levels.");

    private static ProofPoint Threshold(ProofRequest request, ThresholdRange? range) => request.Response != "light"
        ? new ProofPoint("light level and threshold", null, "does not apply: an edge answers", "", "", null)
        : Point(
            "light level and threshold",
            range is not null && request.LightThreshold - range.From >= ProofLimits.ThresholdMargin && range.To - request.LightThreshold >= ProofLimits.ThresholdMargin,
            range is null
                ? (FormattableString)$"no threshold answers; set at {request.LightThreshold}/256"
                : $"dark below {range.From}/256, bright above {range.To}/256 by scan (the firmware reports no level); set at {request.LightThreshold}/256",
            $"at least {ProofLimits.ThresholdMargin}/256 from both",
            Practice,
            range is null ? "Put the LED closer, shade the sensor, check its polarity (--falling)." : Invariant($"Set --light-threshold {(range.From + range.To) / 2}, or give the sensor more light and less surroundings."));

    private static ProofPoint Clock(LoopBack loop) => Point(
        "clock",
        loop.Clock is { } fit && Math.Abs(fit.RateErrorPpm) <= ProofLimits.RateErrorPpm && fit.StandardUncertaintyPpm <= ProofLimits.RateUncertaintyPpm,
        loop.Clock is { } found
            ? (FormattableString)$"{found.RateErrorPpm:+0.0;-0.0;0.0} ppm against the host, standard uncertainty {found.StandardUncertaintyPpm:0.00} ppm ({found.Pings} pings over {found.SpanSeconds:0} s)"
            : $"not fitted",
        $"within {ProofLimits.RateErrorPpm} ppm, known to {ProofLimits.RateUncertaintyPpm} ppm",
        "ceramic resonator +-0.5 %, crystal 50 ppm without a fit, from memory",
        loop.Clock is null ? "Give it more trials: the fit needs pings over ten seconds." : "Check the board's stated frequency; close what keeps the host busy, and try again.");

    private static ProofPoint LostTrials(RunResult run)
    {
        var record = run.Session!.Record;
        return Point(
            "lost lines",
            run.Final.Refused == 0 && record.CountsReconciled == true,
            $"{run.Final.Refused} trials lost, {run.Final.Health.TrialsSentAgain} sent again; the rig's counts {(record.CountsReconciled == true ? "agree" : "do not agree or did not come")}",
            $"none lost, counts agree",
            "docs/protocol.md: what is lost on the line is asked for again",
            "Use a shorter cable and another port or hub.");
    }

    private static ProofPoint BadFrames(RigHealth health) => Point(
        "bad frames",
        health is { BadFramesAtRig: 0, LostBytesAtRig: 0 } && health.BadFramesAtHost <= ProofLimits.BadFramesAtHost,
        $"{health.BadFramesAtHost} at the host, {health.BadFramesAtRig} at the rig, {health.LostBytesAtRig} bytes lost at the rig",
        $"at most {ProofLimits.BadFramesAtHost} at the host, none at the rig",
        "a port that is opened in the middle of a line gives one",
        "Use a shorter cable, another adapter, and join the grounds.");

    private static ProofPoint Restarts(RigHealth health) => Point(
        "restarts",
        health is { Restarts: 0, Reconnections: 0 },
        $"{health.Restarts} restarts, {health.Reconnections} lost connections",
        $"none",
        Practice,
        "Check the supply: a hub that sags, a LED without its resistor.");

    private static ProofPoint Agreement(RigCalibration found, RigCalibration earlier)
    {
        var difference = found.OwnDelayUs - earlier.OwnDelayUs;
        var limit = 2 * Math.Sqrt((found.OwnDelayStandardUncertaintyUs * found.OwnDelayStandardUncertaintyUs)
            + (earlier.OwnDelayStandardUncertaintyUs * earlier.OwnDelayStandardUncertaintyUs));
        return Point(
            "as calibrated",
            Math.Abs(difference) <= limit,
            $"{difference:+0.00;-0.00;0.00} us from the calibration",
            $"within {limit:0.00} us",
            "twice the standard uncertainty of the difference (JCGM 100:2008, G.6.6)",
            "If the wiring is the same, calibrate again; sessions before keep what they referred to.");
    }
}
