using Tarry.Metrology;

namespace Tarry.Findings.ReportIntervals;

/// <summary>The fixed delay in one sitting.</summary>
/// <param name="Sitting">The sitting.</param>
/// <param name="Delay">The delay without the waits for slot and frame.</param>
public sealed record SessionFixedDelay(string Sitting, Latency Delay);
