using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>The fixed delay in one sitting, with its standard error within that sitting, or why none is claimed.</summary>
/// <param name="Sitting">The sitting.</param>
/// <param name="Outcome">The delay without the waits for slot and frame, or the refusal.</param>
public sealed record SessionFixedDelay(string Sitting, FixedDelayOutcome Outcome);
