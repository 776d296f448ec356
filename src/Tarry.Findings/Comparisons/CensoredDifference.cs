using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Distributions;

namespace Tarry.Findings.Comparisons;

/// <summary>The difference of two conditions where latencies are known as intervals only.</summary>
/// <remarks>
/// The mean of each lies anywhere between the means of its bounds, so that the difference may be off by the sum b of both half-widths,
/// however many trials there are. The standard error is raised by b / t(0.95): the 90 % interval that decides whether a difference is small is
/// wider by b on each side, the 95 % interval by somewhat more, and what is told, ranked or detectable follows from the same standard error.
/// </remarks>
internal static class CensoredDifference
{
    /// <summary>By how much the difference may be off, ms; 0 where all latencies are exact.</summary>
    public static double HalfWidthMs(ConditionPair pair) => pair.A.HalfWidthMs + pair.B.HalfWidthMs;

    /// <summary>By how much the standard error of a difference is raised, ms.</summary>
    public static double Raise(ConditionPair pair, double degreesOfFreedom) =>
        HalfWidthMs(pair) is > 0 and var bounds ? bounds / StudentDistribution.Quantile(0.95, degreesOfFreedom) : 0;

    /// <summary>The evidence with the bounds in it.</summary>
    public static PairEvidence Widened(PairEvidence evidence) =>
        HalfWidthMs(evidence.Pair) > 0 && evidence.Difference is { } difference
            ? evidence with
            {
                Difference = new MeanDifference(
                    difference.Difference,
                    difference.StandardError + Raise(evidence.Pair, difference.DegreesOfFreedom),
                    difference.DegreesOfFreedom),
            }
            : evidence;
}
