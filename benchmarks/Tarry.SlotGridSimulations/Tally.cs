using Tarry.Statistics.SlotGrid;
using Tarry.Statistics.Tests.SlotGrid;

namespace Tarry.SlotGridSimulations;

/// <summary>What became of the runs of one case.</summary>
internal sealed class Tally(SimulatedSlots device)
{
    private readonly List<double> errorsPpm = [];
    private readonly List<double> halfPpm = [];
    private readonly List<double> fixedUs = [];
    private readonly List<string> wrong = [];
    private readonly Dictionary<string, int> refused = [];
    private readonly List<double> milliseconds = [];
    private readonly List<double> chainMilliseconds = [];
    private readonly List<double> leads = [];
    private readonly List<double> fixedInErrors = [];
    private int fixedRefused;
    private int covered;

    public void Add(ReportIntervalOutcome outcome, double ms, double chainMs)
    {
        milliseconds.Add(ms);
        chainMilliseconds.Add(chainMs);
        switch (outcome)
        {
            case ReportIntervalFound found when device.SlotMs is not null && Math.Abs((found.IntervalMs / device.TrueIntervalMs) - 1) < 0.002:
                errorsPpm.Add(1e6 * ((found.IntervalMs / device.TrueIntervalMs) - 1));
                halfPpm.Add(1e6 * (found.HighMs - found.LowMs) / 2 / found.IntervalMs);
                covered += found.LowMs <= device.TrueIntervalMs && found.HighMs >= device.TrueIntervalMs ? 1 : 0;
                fixedUs.AddRange(found.Series.Select(series => series.FixedDelayMs).OfType<double>().Select(ms => 1000 * (ms - device.FixedMs)));
                fixedInErrors.AddRange(found.Series.Select(series => series.FixedDelay).OfType<FixedDelayFound>().Select(delay => (delay.DelayMs - device.FixedMs) / delay.StandardErrorMs));
                fixedRefused += found.Series.Count(series => series.FixedDelay is FixedDelayRefused);
                leads.Add(found.Evidence.LeadOverRivalNats ?? 0);
                break;
            case ReportIntervalFound found:
                wrong.Add($"{found.IntervalMs:0.####}({found.Evidence.Kind},{found.Evidence.LineToThreshold:0.#},{found.Evidence.ExplainedShare:0.###},{found.Evidence.LeadOverRivalNats:0})");
                break;
            case ReportIntervalRefused why:
                refused[why.Reason.ToString()] = refused.GetValueOrDefault(why.Reason.ToString()) + 1;
                break;
        }
    }

    public override string ToString() =>
        $"right {errorsPpm.Count,3}/{milliseconds.Count} covered {covered,3} rms {Rms(errorsPpm),7:0.000} half {(halfPpm.Count > 0 ? halfPpm.Average() : 0),6:0.000} ppm fixed {(fixedUs.Count > 0 ? fixedUs.Average() : 0),6:0.0}+-{Sd(fixedUs),5:0.0} us, {Sd(fixedInErrors):0.00} standard errors, within 1.96: {fixedInErrors.Count(z => Math.Abs(z) < 1.96)}/{fixedInErrors.Count}, refused {fixedRefused}; lead {(leads.Count > 0 ? leads.Min() : 0),5:0} {milliseconds.Average(),4:0} ms (max {milliseconds.Max():0}) chain {chainMilliseconds.Average():0} ms"
        + (wrong.Count > 0 ? $" WRONG {string.Join(' ', wrong.Take(6))}" : "")
        + (refused.Count > 0 ? $" refused {string.Join(' ', refused.Select(pair => $"{pair.Key}:{pair.Value}"))}" : "");

    private static double Rms(List<double> values) => values.Count == 0 ? 0 : Math.Sqrt(values.Average(value => value * value));

    private static double Sd(List<double> values)
    {
        var mean = values.Count == 0 ? 0 : values.Average();
        return Rms([.. values.Select(value => value - mean)]);
    }
}
