namespace Tarry.Statistics.Shapes;

/// <summary>Late responses that bunch at multiples of one interval behind the main block, as retransmission makes them.</summary>
/// <param name="IntervalMs">The interval, in milliseconds.</param>
/// <param name="StandardErrorMs">Its standard error.</param>
/// <param name="Multiples">How many multiples carry a lump.</param>
/// <param name="MarginInBic">BIC of late responses without lumps less that with them.</param>
public sealed record RegularLumps(double IntervalMs, double StandardErrorMs, int Multiples, double MarginInBic)
{
    /// <summary>The fewest late responses in which lumps are looked for.</summary>
    public const int FewestLate = 12;

    // Strong evidence or more (Kass and Raftery, 1995), with room for the many intervals that are tried.
    private const double LeastMargin = 14;
    // A lump nearer than the main block is wide hides in part within it: neither its place nor its share can be counted.
    private const double NearestInWidths = 0.9;
    private const int MostMultiples = 3;
    private const int Turns = 12;
    private const double UsualEvenShare = 0.2;

    /// <summary>Looks for lumps.</summary>
    /// <remarks>
    /// Of the responses beyond the main block: copies of the main shape at 1, 2 and 3 intervals and an even rest, against an even or
    /// exponential tail alone, by BIC. Shares by expectation-maximisation, the interval by search.
    /// </remarks>
    /// <param name="shape">The main shape.</param>
    /// <param name="blockEndMs">Where the main block ends, in milliseconds.</param>
    /// <param name="late">The responses beyond it, ascending, where the sessions are on average.</param>
    /// <returns>The lumps; null where there are none, or none that stands apart from the main block.</returns>
    public static RegularLumps? Of(LatencyShape shape, double blockEndMs, double[] late)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(late);
        if (late.Length < FewestLate)
        {
            return null;
        }

        var begin = shape.Quantile(1e-4);
        var width = blockEndMs - begin;
        var reach = late[^1] - blockEndMs;
        var sd = Math.Sqrt(shape.Variance);
        var step = Math.Max(0.1 * sd, (late[^1] - begin) / 2000);
        (double Interval, double Value, int Multiples) best = (0, double.NegativeInfinity, 0);
        for (var interval = NearestInWidths * width; interval <= reach + width; interval += step)
        {
            best = Better(best, interval);
        }

        for (var fine = step / 4; fine > step / 300; fine /= 4)
        {
            var centre = best.Interval;
            for (var k = -4; k <= 4; k++)
            {
                best = Better(best, Math.Max(NearestInWidths * width, centre + (k * fine)));
            }
        }

        var without = Math.Max(Even(blockEndMs, late), Exponential(blockEndMs, late));
        var margin = 2 * (best.Value - without);
        if (margin < LeastMargin)
        {
            return null;
        }

        var h = 0.05 * sd;
        var (below, here, above) = (Value(best.Interval - h, best.Multiples), Value(best.Interval, best.Multiples), Value(best.Interval + h, best.Multiples));
        var curvature = ((2 * here) - below - above) / (h * h);
        return new RegularLumps(best.Interval, curvature > 0 ? 1 / Math.Sqrt(curvature) : step, best.Multiples, margin);

        (double, double, int) Better((double Interval, double Value, int Multiples) so, double interval)
        {
            for (var multiples = 1; multiples <= MostMultiples && begin + (multiples * interval) < late[^1]; multiples++)
            {
                var value = Value(interval, multiples) - (0.5 * (multiples + 1) * Math.Log(late.Length));
                so = value > so.Value ? (interval, value, multiples) : so;
            }

            return so;
        }

        double Value(double interval, int multiples) => Mixture(shape, blockEndMs, late, interval, multiples);
    }

    private static double Mixture(LatencyShape shape, double from, double[] late, double interval, int multiples)
    {
        var rest = 1 / Math.Max(late[^1] - from, 1e-9);
        var densities = new double[multiples][];
        for (var k = 0; k < multiples; k++)
        {
            var by = (k + 1) * interval;
            var beyond = Math.Max(shape.UpperTail(from - by), 1e-12);
            densities[k] = Array.ConvertAll(late, value => shape.Density(value - by) / beyond);
        }

        var shares = Enumerable.Repeat((1 - UsualEvenShare) / multiples, multiples).ToArray();
        var even = UsualEvenShare;
        double sum = 0;
        for (var turn = 0; turn < Turns; turn++)
        {
            var next = new double[multiples];
            var nextEven = 0.0;
            sum = 0;
            for (var i = 0; i < late.Length; i++)
            {
                var all = even * rest;
                for (var k = 0; k < multiples; k++)
                {
                    all += shares[k] * densities[k][i];
                }

                sum += Math.Log(all);
                nextEven += even * rest / all;
                for (var k = 0; k < multiples; k++)
                {
                    next[k] += shares[k] * densities[k][i] / all;
                }
            }

            even = Math.Max(1e-3, nextEven / late.Length);
            for (var k = 0; k < multiples; k++)
            {
                shares[k] = next[k] / late.Length;
            }
        }

        return sum;
    }

    private static double Even(double from, double[] late) => -late.Length * Math.Log(Math.Max(late[^1] - from, 1e-9));

    private static double Exponential(double from, double[] late)
    {
        var mean = Math.Max(late.Average() - from, 1e-9);
        return (-late.Length * (Math.Log(mean) + 1)) - (0.5 * Math.Log(late.Length));
    }
}
