using Tarry.Findings.ReportStreams;
using Tarry.Findings.Sticks.Measures;
using Tarry.Metrology;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>The slot grid of the reports that carry the axes.</summary>
internal static class ReportReadings
{
    private const int Blocks = 20;

    public static void Add(SessionReadings readings, StickRecording recording)
    {
        if (SlotInterval.Of(recording.TimesMs) is not Estimate<Latency> interval)
        {
            readings.Refuse(new StickRefusal(StickRefusalReason.NoGrid), (StickMeasure.ReportInterval, StickPart.Whole));
            return;
        }

        var half = (interval.Interval.High.Milliseconds - interval.Interval.Low.Milliseconds) / 2;
        var error = half / StudentDistribution.Quantile(0.975, Blocks - 1);
        readings.Found.Add(new StickReading(StickMeasure.ReportInterval, StickPart.Whole, interval.Value.Milliseconds, error, Blocks - 1, interval.Trials, "reports"));
    }
}
