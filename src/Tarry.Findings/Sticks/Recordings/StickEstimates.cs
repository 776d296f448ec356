using Tarry.Findings.Conditions;
using Tarry.Findings.Sticks.Measures;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>From readings of sessions to one estimate a condition.</summary>
/// <remarks>
/// Of several sessions the session is the unit: the mean of their values with Student's t, the variance between them moderated over the
/// conditions of the study (docs/methods/means-and-differences.md). Of one session its replicates are, and the interval holds within it.
/// </remarks>
internal static class StickEstimates
{
    /// <summary>Readings of one measure and part of each condition, and of each its estimate; null where a single replicate gives no interval.</summary>
    public static IReadOnlyList<StickEvidence?> Of(IReadOnlyList<IReadOnlyList<StickReading>> conditions)
    {
        var finite = conditions.Select(readings => readings.Where(reading => double.IsFinite(reading.Value)).ToList()).ToList();
        double[] degrees = [.. finite.Select(readings => (double)Math.Max(0, readings.Count - 1))];
        double[] variances = [.. finite.Select(readings => readings.Count < 2 ? 0 : Moments.Variance([.. readings.Select(reading => reading.Value)]))];
        var moderated = degrees.Any(value => value > 0) ? ModeratedVariance.Squeeze(variances, degrees) : null;
        return [.. conditions.Select((readings, index) => readings.Count == 0 ? null : Of(readings, finite[index], moderated, index))];
    }

    private static StickEvidence? Of(IReadOnlyList<StickReading> all, List<StickReading> readings, ModeratedVariance? moderated, int index)
    {
        var kind = StickMeasureText.Of(all[0].Measure).Kind;
        if (readings.Count < all.Count)
        {
            // In some session every position was one and the same: the size is not told from none.
            var most = all.Max(reading => double.IsFinite(reading.Value) ? Math.Exp(reading.Value) : 0);
            return new StickEvidence(all[0].Measure, all[0].Part, most, 0, 1, all) { Method = StickMethodName.NotToldFromNone };
        }

        var value = readings.Average(reading => reading.Value);
        if (readings.Count == 1)
        {
            return readings[0] is { StandardError: { } alone } one
                ? new StickEvidence(one.Measure, one.Part, value, alone, Math.Max(1, one.DegreesOfFreedom), all) { Method = StickMethodName.WithinSession, Kind = kind }
                : null;
        }

        // Few sessions may agree by chance; the mean is no better known than what scatters within them allows.
        var within = Math.Sqrt(readings.Sum(reading => Math.Pow(reading.StandardError ?? 0, 2))) / readings.Count;
        var error = Math.Max(within, Math.Sqrt(moderated!.Posterior[index] / readings.Count));

        return new StickEvidence(all[0].Measure, all[0].Part, value, error, moderated.TotalDegreesOfFreedom[index], all) { Method = StickMethodName.OverSessions, Kind = kind };
    }

    /// <summary>The estimate that findings show.</summary>
    public static StickEstimate Shown(StickEvidence evidence)
    {
        var (value, replicates, of, sessions) = (evidence.Value, evidence.Readings.Sum(reading => reading.Replicates), evidence.Readings[0].ReplicateOf, evidence.Readings.Count);
        if (evidence.Method == StickMethodName.NotToldFromNone)
        {
            var limit = Math.Max(value, evidence.StepPercent / 2);
            return new StickEstimate(value, 0, limit, Estimates.Level, evidence.Method, replicates, of, sessions, 0, 1);
        }

        var half = evidence.HalfWidth(Estimates.Level);
        var (low, high) = evidence.Method == StickMethodName.DistanceOfAPoint ? OfDistance(evidence) : (value - evidence.LowerWidth(Estimates.Level), value + half);
        if (evidence.Kind == StickValueKind.Size)
        {
            (value, low, high) = (Math.Exp(value), Math.Exp(low), Math.Exp(high));
        }
        else if (evidence.Kind == StickValueKind.NotNegative)
        {
            // Chance may take all of the interval below 0: what is as far above it is not excluded.
            (value, low, high) = (Math.Max(0, value), Math.Max(0, low), high > 0 ? high : half);
        }

        high = evidence.Hidden > 0 ? Math.Max(high, evidence.Hidden) : high;

        return new StickEstimate(value, low, high, Estimates.Level, evidence.Method, replicates, of, sessions, evidence.StandardError, evidence.DegreesOfFreedom);
    }

    /// <summary>The distance of a point from its two coordinates, with the error along its direction.</summary>
    public static StickEvidence? Distance(StickEvidence? x, StickEvidence? y)
    {
        if (x is null || y is null)
        {
            return null;
        }

        var distance = Math.Sqrt((x.Value * x.Value) + (y.Value * y.Value));
        var (cosine, sine) = distance == 0 ? (Math.Sqrt(0.5), Math.Sqrt(0.5)) : (x.Value / distance, y.Value / distance);
        var error = Math.Sqrt(Math.Pow(cosine * x.StandardError, 2) + Math.Pow(sine * y.StandardError, 2));
        return new StickEvidence(x.Measure, StickPart.Whole, distance, error, Math.Min(x.DegreesOfFreedom, y.DegreesOfFreedom), x.Readings)
        {
            Resolution = (Math.Abs(cosine) * x.Resolution) + (Math.Abs(sine) * y.Resolution),
            Method = StickMethodName.DistanceOfAPoint,
            Kind = StickValueKind.NotNegative,
        };
    }

    // The noncentral F gives the limits without rounding; they are wider by as much as rounding widens Student's.
    private static (double Low, double High) OfDistance(StickEvidence evidence)
    {
        var half = evidence.HalfWidth(Estimates.Level);
        if (evidence.StandardError == 0)
        {
            return (Math.Max(0, evidence.Value - half), evidence.Value + half);
        }

        var limits = MagnitudeInterval.Of(evidence.Value, evidence.StandardError, evidence.DegreesOfFreedom, Estimates.Level);
        var wider = half / (StudentDistribution.Quantile(0.5 + (Estimates.Level / 2), evidence.DegreesOfFreedom) * evidence.StandardError);
        // So small a distance is rare of noise alone, and the limits then end below it.
        return (Math.Max(0, evidence.Value - (wider * (evidence.Value - limits.Low))), Math.Max(half, evidence.Value + (wider * (limits.High - evidence.Value))));
    }
}
