using Tarry.Metrology;

namespace Tarry.Findings.ReportStreams;

/// <summary>Finds the interval between report slots from the times at which reports came.</summary>
public interface IReportIntervalEstimator
{
    /// <summary>The interval, or how much is missing to tell.</summary>
    /// <param name="timesMs">Times of the reports in milliseconds, ascending.</param>
    EstimateOutcome<Latency> Interval(ReadOnlySpan<double> timesMs);
}
