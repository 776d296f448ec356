using Tarry.Findings.Conditions;
using Tarry.Findings.Factors;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Rim;
using Tarry.Statistics.Comparisons;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Distributions;
using Tarry.Statistics.Intervals;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>Compares each condition with a layer with the one that differs from it in the layer alone and has none.</summary>
internal static class ReshapingFindings
{
    private const string Layer = "layer";
    private const double ToldBelow = 0.05;
    private const double LeastSquareness = 2;
    private const double LeastShift = 1;
    private const double LeastBend = 0.03;
    private const int Tests = 5;
    private const string OfSessions = "sessions with and without";

    public static IReadOnlyList<ReshapingFinding> Of(IReadOnlyList<ConditionEntry> conditions, IReadOnlyList<StickCondition> present)
    {
        var entries = conditions.ToDictionary(condition => condition.Id, StringComparer.Ordinal);
        var known = present.Where(condition => entries.ContainsKey(condition.Id)).ToList();
        return
        [
            .. from without in known
               from with in known
               let difference = FactorLevel.OnlyDifference(entries[with.Id], entries[without.Id])
               where difference is { Factor: Layer } && FactorLevel.IsNone(difference.Value.B) && !FactorLevel.IsNone(difference.Value.A)
               select Compared(with, without, difference.Value.A),
        ];
    }

    private static ReshapingFinding Compared(StickCondition with, StickCondition without, string layer)
    {
        var (rowsWith, rowsWithout) = (LevelResponse.Of(with), LevelResponse.Of(without));
        var squareness = Squareness(with, without);
        var refused = Refused(rowsWith, rowsWithout);
        var sessions = Math.Min(LevelResponse.Sessions(with), LevelResponse.Sessions(without));
        var curve = refused is null ? ResponseCurve.Fit(LevelResponse.Mean(rowsWithout), LevelResponse.Mean(rowsWith)) : null;
        StickOutcome Parameter(Func<ResponseCurve, double> of) =>
            curve is { } fitted ? Jackknifed(of(fitted), of, rowsWith, rowsWithout, sessions) : refused ?? new StickRefusal(StickRefusalReason.TooFewPasses, 0, 2);
        var (zone, saturation, exponent) = (Parameter(fit => fit.DeadZone), Parameter(fit => fit.Saturation), Parameter(fit => fit.Exponent));
        var ends = rowsWithout.Count == 0 ? 100 : LevelResponse.Mean(rowsWithout).Max();
        var (ofZone, ofSaturation, ofForm) = (P(zone, 0, LeastShift), saturation is StickEstimate { Value: var value } && value > ends ? 1 : P(saturation, ends, LeastShift), 1.0);
        if (curve is { } whole && zone is StickEstimate stretched && saturation is StickEstimate fitted)
        {
            var (mean, mapped) = (LevelResponse.Mean(rowsWithout), LevelResponse.Mean(rowsWith));
            var cut = CutZone.Of(whole, mean, mapped);
            ofForm = MapDeparture.P(whole, cut, rowsWithout, rowsWith);
            if (ofForm * Tests < ToldBelow)
            {
                // What a curve of another form would need for a zone and an end is not there: the levels themselves tell.
                var edges = MapEdges.Of(mean, mapped);
                (zone, saturation) = (Between(stretched, edges.Still, edges.Moving), Between(fitted, edges.Rising, edges.Ended));
                (ofZone, ofSaturation) = (edges.Still > LeastShift ? 0 : 1, edges.Ended < ends - LeastShift ? 0 : 1);
            }
            else
            {
                zone = WithCut(stretched, cut);
                ofZone = P(zone, 0, LeastShift);
            }
        }

        (ReshapingKind Kind, double P)[] tests =
        [
            (ReshapingKind.CircleToSquare, squareness is StickEstimate { Value: <= 0 } ? 1 : P(squareness, 0, LeastSquareness)),
            (ReshapingKind.DeadZone, ofZone),
            (ReshapingKind.Saturation, ofSaturation),
            (ReshapingKind.Curve, P(exponent, 1, LeastBend)),
            (ReshapingKind.Curve, ofForm),
        ];
        var adjusted = HolmAdjustment.Adjust(tests.Select(test => test.P).ToArray());
        return new ReshapingFinding
        {
            With = with.Id,
            Without = without.Id,
            Layer = layer,
            Kinds = [.. tests.Where((_, index) => adjusted[index] < ToldBelow).Select(test => test.Kind).Distinct()],
            Squareness = squareness,
            DeadZone = zone,
            Saturation = saturation,
            Exponent = exponent,
            Map = refused is null ? Map(rowsWith, rowsWithout) : [],
            ReachRatio = Roses.Of(with.Rims) is { } one && Roses.Of(without.Rims) is { } other ? [.. one.Distances.Zip(other.Distances, (a, b) => a / b)] : [],
        };
    }

    private static StickRefusal? Refused(IReadOnlyList<double[]> with, IReadOnlyList<double[]> without) =>
        with.Count == 0 || without.Count == 0 ? new StickRefusal(StickRefusalReason.NoStimulus)
        : with.Count < 2 || without.Count < 2 ? new StickRefusal(StickRefusalReason.TooFewReplicates, 1, 2)
        : null;

    // Where the axis stands at levels that the curve does not leave out, the zone is cut; a smaller one would fall between the middle and the first level.
    private static StickEstimate WithCut(StickEstimate stretched, CutZone cut) =>
        cut.Low > 0 ? Between(stretched, cut.Low, cut.High)
        : stretched.Value < LeastShift ? stretched with { High = Math.Max(stretched.High, cut.High) }
        : stretched;

    private static StickEstimate Between(StickEstimate fitted, double low, double high) => fitted with { Value = (low + high) / 2, Low = low, High = high, StandardError = 0 };

    private static StickOutcome Squareness(StickCondition with, StickCondition without)
    {
        var estimates = Recordings.StickEstimates.Of([with.Of(StickMeasure.Squareness, StickPart.Whole), without.Of(StickMeasure.Squareness, StickPart.Whole)]);
        if (estimates is not [{ } a, { } b])
        {
            return new[] { with, without }.First(condition => condition.Of(StickMeasure.Squareness, StickPart.Whole).Count == 0 || estimates.Contains(null)).Refusal(StickMeasure.Squareness, StickPart.Whole);
        }

        var difference = WelchDifference.OfVariances(a.Value - b.Value, a.StandardError * a.StandardError, Math.Max(1, a.DegreesOfFreedom), b.StandardError * b.StandardError, Math.Max(1, b.DegreesOfFreedom));
        return Estimate(difference.Difference, difference.StandardError, difference.DegreesOfFreedom, a.Resolution + b.Resolution, a.Readings.Count + b.Readings.Count, OfSessions, Math.Min(a.Readings.Count, b.Readings.Count));
    }

    // Each row of either side is left out in turn (B. Efron, C. Stein, Ann. Statist. 9, 1981), and each level: rounding, and what the curve does not
    // describe, come back with every row.
    private static StickEstimate Jackknifed(double value, Func<ResponseCurve, double> of, IReadOnlyList<double[]> with, IReadOnlyList<double[]> without, int sessions)
    {
        var variance = Variance(with, rows => ResponseCurve.Fit(LevelResponse.Mean(without), LevelResponse.Mean(rows)), of)
            + Variance(without, rows => ResponseCurve.Fit(LevelResponse.Mean(rows), LevelResponse.Mean(with)), of);
        var (whole, mapped) = (LevelResponse.Mean(without), LevelResponse.Mean(with));
        var levels = LevelResponse.Grid.Select((_, left) => ResponseCurve.Fit(Without(whole, left), Without(mapped, left), mapped.Max())).OfType<ResponseCurve>().Select(of).ToArray();
        return Estimate(value, Math.Sqrt(Math.Max(variance, Jackknife(levels))), with.Count + without.Count - 2, 0, with.Count + without.Count, sessions > 1 ? OfSessions : "sweeps with and without", sessions);
    }

    private static double Variance(IReadOnlyList<double[]> rows, Func<IReadOnlyList<double[]>, ResponseCurve?> fit, Func<ResponseCurve, double> of)
    {
        return Jackknife([.. rows.Select((_, left) => fit([.. rows.Where((_, index) => index != left)])).OfType<ResponseCurve>().Select(of)]);
    }

    private static double Jackknife(double[] values) => values.Length < 2 ? 0 : Moments.Variance(values) * (values.Length - 1) * (values.Length - 1) / values.Length;

    private static double[] Without(double[] values, int left) => [.. values.Where((_, index) => index != left)];

    private static StickEstimate Estimate(double value, double error, double degrees, double resolution, int replicates, string of, int sessions)
    {
        var half = ResolutionHalfWidth.Of(error, degrees, resolution, Estimates.Level);
        return new StickEstimate(value, value - half, value + half, Estimates.Level, Recordings.StickMethodName.LayerAgainstNone, replicates, of, sessions, error, degrees);
    }

    private static double P(StickOutcome outcome, double ideal, double allowance)
    {
        if (outcome is not StickEstimate estimate)
        {
            return 1;
        }

        var excess = Math.Abs(estimate.Value - ideal) - allowance;
        return !(excess > 0) ? 1 : estimate.StandardError == 0 ? 0 : Math.Min(1, StudentDistribution.TwoSidedP(excess / estimate.StandardError, estimate.DegreesOfFreedom));
    }

    private static List<MapPoint> Map(IReadOnlyList<double[]> with, IReadOnlyList<double[]> without)
    {
        var t = StudentDistribution.Quantile(0.5 + (Estimates.Level / 2), with.Count - 1);
        return [.. LevelResponse.Grid.Select((_, place) =>
        {
            double[] said = [.. with.Select(row => row[place])];
            var half = t * Moments.StandardDeviation(said) / Math.Sqrt(said.Length);
            return new MapPoint(without.Average(row => row[place]), Moments.Mean(said), Moments.Mean(said) - half, Moments.Mean(said) + half);
        })];
    }
}
