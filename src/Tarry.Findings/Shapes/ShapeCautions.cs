using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Shapes;

/// <summary>Where a shape is not the block that the stated report rate predicts, and where latencies form separate lumps.</summary>
/// <remarks>Each asks for far more than chance gives, so that clean conditions are not accused: the figures are on the methods page.</remarks>
internal static class ShapeCautions
{
    private const double BlockOffPart = 0.15;
    private const double BlockOffMs = 0.3;
    private const double FarBehindInBic = 20;
    private const double PlainDistance = 0.015;
    private const double LeastShareOfALump = 0.05;
    private const double LeastShareOfALumpExpected = 0.1;
    private const double DeepestOfAGap = 0.5;
    private const double WindowPart = 0.1;
    private const double PlainErrors = 4;

    public static IEnumerable<Caution> Of(ConditionFinding condition, FittedCondition fitted, BlockWidthFinding width)
    {
        if (condition.NominalReportHz is { } rate && rate > 0 && Unexpected(1000 / rate, fitted, width) is { } found)
        {
            yield return new Caution(CautionKind.ShapeUnexpected, condition.Id, new Dictionary<string, double>
            {
                ["nominal_report_hz"] = rate,
                ["expected_block_ms"] = 1000 / rate,
                [found.Name] = found.Value,
            });
        }

        if (fitted.Choice is { Decided: true, Best.Shape: TwoLumpShape lumps } && HasGap(lumps, LeastShareOfALump) && ShowsGap(lumps, fitted))
        {
            yield return new Caution(CautionKind.Modes, condition.Id, new Dictionary<string, double>
            {
                ["modes"] = 2,
                ["apart_ms"] = lumps.Later.Mean - lumps.Earlier.Mean,
                ["later_percent"] = 100 * lumps.LaterShare,
            });
        }
    }

    private static (string Name, double Value)? Unexpected(double expectedMs, FittedCondition fitted, BlockWidthFinding width)
    {
        if (width.Evidence != BlockWidthEvidence.ShapeAlone && width.Width is { } found)
        {
            var (low, high) = (found.Interval.Low.Milliseconds, found.Interval.High.Milliseconds);
            var value = found.Value.Milliseconds;

            // Twice the 95 % interval: four standard errors.
            var outside = expectedMs < low - (value - low) || expectedMs > high + (high - value);
            return outside && IsOff(value, expectedMs) ? ("found_block_ms", value) : null;
        }

        if (width.AtMost is { } most && width.Reason == BlockWidthReason.IncludesZero && width.Evidence != BlockWidthEvidence.ShapeAlone)
        {
            return expectedMs > most.Milliseconds * 1.5 && IsOff(most.Milliseconds, expectedMs) ? ("found_at_most_ms", most.Milliseconds) : null;
        }

        var choice = fitted.Choice;
        if (!choice.Decided || choice.Best.Shape is TwoLumpShape { } rare && !HasGap(rare, LeastShareOfALumpExpected))
        {
            return null;
        }

        var expected = ExpectedBlock.Of(choice, expectedMs);
        return expected.BicBehind > FarBehindInBic && expected.LargestDistance > PlainDistance ? Found(choice.Best.Shape, expectedMs) : null;
    }

    private static (string, double)? Found(LatencyShape shape, double expectedMs) => shape switch
    {
        TwoLumpShape lumps => ("found_lumps_apart_ms", lumps.Later.Mean - lumps.Earlier.Mean),
        ExponentiallyModifiedNormalShape => ("found_tail_mean_ms", shape.Parameters[^1].Value),
        NormalShape => ("found_normal_sd_ms", Math.Sqrt(shape.Variance)),
        _ when IsOff(shape.Parameters[1].Value, expectedMs) => ("found_block_ms", shape.Parameters[1].Value),
        _ => null,
    };

    private static bool IsOff(double foundMs, double expectedMs) => Math.Abs(foundMs - expectedMs) > Math.Max(BlockOffMs, BlockOffPart * expectedMs);

    private static bool HasGap(TwoLumpShape lumps, double leastShare)
    {
        if (Math.Min(lumps.LaterShare, 1 - lumps.LaterShare) < leastShare)
        {
            return false;
        }

        var (from, to) = (lumps.Earlier.Mean, lumps.Later.Mean);
        var valley = Enumerable.Range(0, 101).Min(i => lumps.Density(from + ((to - from) * i / 100)));
        return valley < DeepestOfAGap * Math.Min(lumps.Density(from), lumps.Density(to));
    }

    // Asked of the data themselves: fewer than half as many responses about the valley as about the lower lump, by four standard errors.
    private static bool ShowsGap(TwoLumpShape lumps, FittedCondition fitted)
    {
        var values = fitted.Sessions.SelectMany((session, j) => Spread(session.Latencies.Sorted, session.ResolutionMs, fitted.Choice.Best.PlacesMs[j])).ToArray();
        var (from, to) = (lumps.Earlier.Mean, lumps.Later.Mean);
        var half = WindowPart * (to - from);
        var valley = Enumerable.Range(0, 101).Select(i => from + ((to - from) * i / 100)).MinBy(lumps.Density);
        int About(double middle) => values.Count(value => Math.Abs(value - middle) <= half);
        var (low, inValley) = (Math.Min(About(from), About(to)), About(valley));
        return inValley < DeepestOfAGap * low && low - inValley > PlainErrors * Math.Sqrt(low + inValley);
    }

    // Values recorded in steps are spread evenly over their step: each step would else be a mode.
    private static double[] Spread(ReadOnlySpan<double> sorted, double stepMs, double placeMs)
    {
        var values = sorted.ToArray();
        for (var i = 0; i < values.Length;)
        {
            var ties = 1;
            while (i + ties < values.Length && values[i + ties] == values[i])
            {
                ties++;
            }

            var value = values[i] - placeMs;
            for (var k = 0; k < ties; k++)
            {
                values[i + k] = value + (stepMs * (((k + 0.5) / ties) - 0.5));
            }

            i += ties;
        }

        return values;
    }
}
