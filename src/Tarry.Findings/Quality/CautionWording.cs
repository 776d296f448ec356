using System.Globalization;

namespace Tarry.Findings.Quality;

/// <summary>The words of every caution, the same on the command line, in the report and on the pages.</summary>
public static class CautionWording
{
    /// <summary>The caution as advice to the reader, one or two sentences.</summary>
    public static string Sentence(Caution caution)
    {
        ArgumentNullException.ThrowIfNull(caution);
        string N(string name, string format = "0.##") =>
            caution.Numbers.TryGetValue(name, out var value) ? value.ToString(format, CultureInfo.InvariantCulture) : "?";
        string Count(string name, string singular, string plural) => $"{N(name, "N0")} {(IsOne(caution, name) ? singular : plural)}";
        string Percent(string name) =>
            caution.Numbers.TryGetValue(name, out var value) && value is > 0 and < 0.01 ? "below 0.01 %" : $"{N(name)} %";
        var subject = caution.Subject;
        return caution.Kind switch
        {
            CautionKind.OneSitting => $"{subject} was measured in one sitting. Its intervals say how well that sitting is known, not what re-plugging or another day would change; measure it in at least two more.",
            CautionKind.OneUnit => $"{subject} was measured on one unit. What is said holds for that unit, not for the model.",
            CautionKind.TooFewTrials => $"{subject} has {Count("trials", "response", "responses")}, fewer than {N("need", "N0")}. Quantiles and intervals are coarse; capture more.",
            CautionKind.MissedShare => $"{subject} left {N("missed", "N0")} of {Count("presses", "press", "presses")} without a response ({Percent("missed_percent")}). Misses count as later than any response in the quantiles.",
            CautionKind.LossFavours => $"The mean of {subject} is of the responses that arrived; {Percent("missed_percent")} did not, and a link that loses its late ones looks faster than it is. Judge it by its quantiles.",
            CautionKind.Drift => $"Latency drifted by {N("drift_ms", "+0.00;\u22120.00")} ms from the beginning to the end of {subject}. Let the device warm up, then measure again; this session stays out of the pooled variance.",
            CautionKind.ChangePoint => $"Latency changed by {N("step_ms", "+0.00;\u22120.00")} ms at trial {N("sequence")} of {subject}. Find what changed then; this session stays out of the pooled variance.",
            CautionKind.Dependence when Repeats(caution) => $"Trials of {subject} repeat a pattern: batches of them agree more than chance allows. Look for presses in step with the device; this session stays out of the pooled variance.",
            CautionKind.Dependence => $"Trials of {subject} depend on each other: they are worth about {N("effective_trials", "N0")} independent ones of {N("trials", "N0")}. This session stays out of the pooled variance.",
            CautionKind.PhaseLocked => $"The presses of {subject} keep step with a period of {N("period_ms", "0.###")} ms. Its mean may be off by up to {N("worst_bias_ms")} ms; let the press intervals vary at random by at least 50 ms.",
            CautionKind.PressLattice => $"The press intervals of {subject} lie within {N("range_ms")} ms of each other, so that presses can alias with report and frame periods. Let them vary by at least 50 ms.",
            CautionKind.Beat => $"Report and frame period of {subject} beat once in {N("beat_s", "N1")} s, and the session lasts {N("session_s", "N0")} s: its mean may be off by up to {N("worst_bias_ms")} ms, and no interval covers that. Set the frame cap off the ratio, to {N("frame_cap_hz", "0")} frames a second, and measure again; this session stays out of the pooled variance.",
            CautionKind.Modes when caution.Numbers.ContainsKey("apart_ms") => $"The latencies of {subject} form {N("modes", "0")} lumps {N("apart_ms")} ms apart, {Percent("later_percent")} of them in the later; a mean or a median may fall where no trial is.",
            CautionKind.Modes => $"The latencies of {subject} form {N("modes", "0")} lumps; a mean or a median may fall where no trial is.",
            CautionKind.UnequalVariances => $"The scatter between sessions differs between {subject}: standard deviations from {N("smallest_ms")} to {N("largest_ms")} ms. It is pooled within each group only.",
            CautionKind.ShapeUnexpected => $"The stated {N("nominal_report_hz")} reports a second of {subject} would spread its latencies evenly over {N("expected_block_ms")} ms; {FoundInstead(caution, N)}. Check the stated rate, and what lies between device and sensor.",
            CautionKind.ClockNotFitted => $"The rig's clock was not fitted against the host's in {subject}. Differences between conditions are not touched; absolute latencies carry the tolerance of its crystal or resonator.",
            CautionKind.RigRebooted => $"The rig restarted {(IsOne(caution, "restarts") ? "once" : $"{N("restarts", "N0")} times")} in {subject}. What was in flight then is lost; all else was kept.",
            CautionKind.RefusedRows => $"{Count("refused", "item", "items")} of {subject} {(IsOne(caution, "refused") ? "was" : "were")} refused as bad. The session record says which and why.",
            CautionKind.IntervalCensored => $"The latencies of {subject} are known as intervals only.",
            CautionKind.ReferenceUnstated => $"Not both studies state {subject} of their reference, so whether it is the same one rests on your word. State it with 'tarry condition'.",
            CautionKind.ReferenceMoved => $"The reference {subject} itself changed by {N("change_ms", "+0.00;-0.00")} ms between the studies. What the bench adds to reference and condition alike cancels; a change of the reference alone would not, and would show as a change of the condition.",
            CautionKind.MarginsDiffer => $"{subject} have margins of {N("smaller_ms")} and {N("larger_ms")} ms; the smaller is used.",
            CautionKind.SeveralFactors => $"{N("factors", "0")} factors differ: {subject}. What changed is due to all of them together; change one at a time.",
            CautionKind.RigUncalibrated => $"{N("uncalibrated_sessions", "N0")} of {Count("captured_sessions", "captured session", "captured sessions")} of {subject} {(IsOne(caution, "uncalibrated_sessions") ? "is" : "are")} of a rig that was not calibrated: absolute latencies rest on the default limits of its class. Differences within a sitting are not touched. Calibrate it with 'tarry rig calibrate'.",
            CautionKind.NotFinished => $"{subject} is not finished: {Count("trials", "trial counts", "trials count")} so far, and what it says will change. Finish its run, or seal it as it is at the bench.",
            _ => throw new ArgumentOutOfRangeException(nameof(caution), caution.Kind, "A kind of caution without words."),
        };
    }

    private static string FoundInstead(Caution caution, Func<string, string, string> number)
    {
        string Ms(string name) => number(name, "0.##") + " ms";
        bool Has(string name) => caution.Numbers.ContainsKey(name);
        return Has("found_block_ms") ? $"the block found is {Ms("found_block_ms")} wide"
            : Has("found_at_most_ms") ? $"no such block is found: it is {Ms("found_at_most_ms")} wide at most"
            : Has("found_lumps_apart_ms") ? $"they form two lumps instead, {Ms("found_lumps_apart_ms")} apart"
            : Has("found_tail_mean_ms") ? $"they trail off instead, with a mean of {Ms("found_tail_mean_ms")}"
            : Has("found_normal_sd_ms") ? $"they follow a normal curve instead, with a standard deviation of {Ms("found_normal_sd_ms")}"
            : "they do not";
    }

    private static bool IsOne(Caution caution, string name) => caution.Numbers.TryGetValue(name, out var value) && value == 1;

    private static bool Repeats(Caution caution) =>
        caution.Numbers.TryGetValue("effective_trials", out var effective)
        && caution.Numbers.TryGetValue("trials", out var trials)
        && effective > 0.95 * trials;

    /// <summary>The kind as it stands in JSON, such as <c>loss-favours</c>.</summary>
    public static string Key(CautionKind kind) => Hyphenated.Name(kind.ToString());
}
