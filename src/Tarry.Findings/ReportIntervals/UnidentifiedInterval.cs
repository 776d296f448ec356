using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Findings.ReportIntervals;

/// <summary>Why no report interval is claimed.</summary>
/// <param name="Reason">The reason.</param>
/// <param name="AtMost">What the interval is at most, if there are slots that keep no step with the frames; null where nothing bounds it.</param>
/// <param name="Choices">Intervals that the data do not tell apart, ascending.</param>
public sealed record UnidentifiedInterval(ReportIntervalReason Reason, LatencyDifference? AtMost, IReadOnlyList<LatencyDifference> Choices);
