namespace Tarry.Statistics.Edges;

/// <summary>The rise of a light at the full rate, its background taken off, and where its middle is.</summary>
internal sealed class LightRise
{
    private const double LeastModulation = 0.05;
    private const double LowestModulationHz = 150;
    private readonly double[] samples;
    private readonly double hz;
    private readonly int first;
    private readonly int coarse;

    public LightRise(ReadOnlySpan<double> recorded, int coarse, double hz, Func<double, double> background)
    {
        this.hz = hz;
        first = Math.Max(0, coarse - (int)(0.012 * hz));
        this.coarse = coarse - first;
        samples = new double[Math.Min(recorded.Length, coarse + (int)(0.042 * hz)) - first];

        // The background varies over milliseconds: it is computed every tenth of one and read between.
        var every = Math.Max(1, (int)(hz / 10_000));
        var right = background(first);
        for (var from = 0; from < samples.Length; from += every)
        {
            var left = right;
            right = background(first + from + every);
            var slope = (right - left) / every;
            for (var index = from; index < Math.Min(from + every, samples.Length); index++)
            {
                samples[index] = recorded[first + index] - left - (slope * (index - from));
            }
        }
    }

    /// <summary>The frequency of a modulation of more than a twentieth of the height, or null.</summary>
    public double? ModulationHz(double height)
    {
        var from = Math.Min(samples.Length, coarse + (int)(0.008 * hz));
        return DominantPeriod.Find(samples.AsSpan(from), hz, LowestModulationHz, 0.45 * hz, LeastModulation * height)?.Hz;
    }

    /// <summary>Where it crosses half the height, in samples of the recording; null where it does not, nearby.</summary>
    public double? Middle(double height, double? periodSeconds)
    {
        var steady = periodSeconds is { } period ? Boxcar(samples, Math.Max(1, period * hz)) : samples;
        var smooth = Boxcar(steady, Math.Max(1, 0.0003 * hz));
        var (from, to) = (Math.Max(1, coarse - (int)(0.01 * hz)), Math.Min(samples.Length, coarse + (int)(0.01 * hz)));
        var middle = from;
        while (middle < to && !(smooth[middle - 1] < height / 2 && smooth[middle] >= height / 2))
        {
            middle++;
        }

        if (middle >= to)
        {
            return null;
        }

        var (low, high) = (middle, middle);
        while (low > 0 && smooth[low] > 0.15 * height)
        {
            low--;
        }

        while (high < samples.Length - 1 && smooth[high] < 0.85 * height)
        {
            high++;
        }

        var crossing = middle - 1 + (((height / 2) - smooth[middle - 1]) / (smooth[middle] - smooth[middle - 1]));
        return first + (Polynomial(steady, low, high, crossing, height / 2, Degree(steady, smooth, height)) ?? crossing);
    }

    // A cubic follows the rise more closely; below some 30 to 1 its scatter costs more than that gains.
    private int Degree(double[] steady, double[] smooth, double height)
    {
        var squares = 0.0;
        var count = Math.Max(1, coarse / 2);
        for (var index = 0; index < count; index++)
        {
            squares += (steady[index] - smooth[index]) * (steady[index] - smooth[index]);
        }

        return Math.Sqrt(squares / count) * 30 < height ? 3 : 2;
    }

    private static double? Polynomial(double[] values, int low, int high, double near, double level, int degree)
    {
        if (high - low < 2 * (degree + 1))
        {
            return null;
        }

        var scale = (high - low) / 2.0;
        var centre = (high + low) / 2.0;
        var equations = new NormalEquations(degree + 1);
        Span<double> powers = stackalloc double[degree + 1];
        powers[0] = 1;
        for (var index = low; index <= high; index++)
        {
            for (var power = 1; power <= degree; power++)
            {
                powers[power] = powers[power - 1] * ((index - centre) / scale);
            }

            equations.Add(powers, values[index]);
        }

        if (equations.Solve() is not var (coefficients, _))
        {
            return null;
        }

        var at = (near - centre) / scale;
        for (var iteration = 0; iteration < 8; iteration++)
        {
            var (value, slope) = (0.0, 0.0);
            for (var power = degree; power >= 0; power--)
            {
                slope = (slope * at) + value;
                value = (value * at) + coefficients[power];
            }

            if (slope <= 0)
            {
                return null;
            }

            at -= (value - level) / slope;
        }

        return Math.Abs(at) <= 1.5 ? centre + (at * scale) : null;
    }

    /// <summary>The mean over a number of samples that need not be whole, about each sample.</summary>
    private static double[] Boxcar(double[] values, double width)
    {
        var sums = new double[values.Length + 1];
        for (var index = 0; index < values.Length; index++)
        {
            sums[index + 1] = sums[index] + values[index];
        }

        // Away from the ends all are alike: so many whole samples to each side, and the same parts of the next.
        var (below, above) = (0.5 - (width / 2), 0.5 + (width / 2));
        var (lowWhole, highWhole) = ((int)Math.Floor(below), (int)Math.Floor(above));
        var (lowPart, highPart, share) = (below - lowWhole, above - highWhole, 1 / width);
        var averages = new double[values.Length];
        for (var index = 0; index < values.Length; index++)
        {
            if (index + lowWhole >= 0 && index + highWhole + 1 < sums.Length)
            {
                var (low, lowNext, high, highNext) = (sums[index + lowWhole], sums[index + lowWhole + 1], sums[index + highWhole], sums[index + highWhole + 1]);
                averages[index] = share * (high - low + (highPart * (highNext - high)) - (lowPart * (lowNext - low)));
            }
            else
            {
                var (low, high) = (Math.Max(0, index + below), Math.Min(values.Length, index + above));
                averages[index] = (Sum(sums, high) - Sum(sums, low)) / (high - low);
            }
        }

        return averages;
    }

    private static double Sum(double[] sums, double at)
    {
        var whole = Math.Min((int)at, sums.Length - 2);
        return sums[whole] + ((at - whole) * (sums[whole + 1] - sums[whole]));
    }
}
