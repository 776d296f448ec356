namespace Tarry.Statistics.SlotGrid;

/// <summary>The exact power of weighted times, 2 |sum z e^(-2 pi i f m)|^2 / sum z^2, summed over series.</summary>
/// <remarks>Without a line each series adds a chi-squared variable of 2 degrees of freedom.</remarks>
internal static class LinePower
{
    private const int Points = 17;
    private const int Passes = 4;
    private const int Shrink = 5;

    public static double At(IReadOnlyList<WeightedTimes> parts, double frequency)
    {
        var power = 0.0;
        foreach (var part in parts)
        {
            var (re, im) = Sum(part, frequency, part.Mean);
            power += 2 * ((re * re) + (im * im)) / part.SquaredWeights;
        }

        return power;
    }

    /// <summary>sum z e^(-2 pi i f (m - origin)).</summary>
    public static (double Re, double Im) Sum(WeightedTimes part, double frequency, double origin)
    {
        var (re, im) = (0.0, 0.0);
        for (var i = 0; i < part.Count; i++)
        {
            var (sine, cosine) = SinCosCycles(frequency * (part.Times[i] - origin));
            re += part.Weights[i] * cosine;
            im -= part.Weights[i] * sine;
        }

        return (re, im);
    }

    /// <summary>The frequency of most power within <paramref name="cycles"/>/<paramref name="span"/> of a first one.</summary>
    public static (double Frequency, double Power) Zoom(IReadOnlyList<WeightedTimes> parts, double frequency, double span, double cycles = 0.6, int passes = Passes)
    {
        var half = cycles / span;
        var best = 0.0;
        Span<double> power = stackalloc double[Points];
        for (var pass = 0; pass < passes; pass++, half /= Shrink)
        {
            power.Clear();
            var (first, step) = (frequency - half, 2 * half / (Points - 1));
            foreach (var part in parts)
            {
                AddGrid(part, first, step, power);
            }

            var top = 0;
            for (var k = 1; k < Points; k++)
            {
                top = power[k] > power[top] ? k : top;
            }

            (frequency, best) = (first + (top * step), power[top]);
        }

        return (frequency, best);
    }

    /// <summary>
    /// The mean power about a frequency, without the three resolution cells to either side: of the 9 cells beyond, or of the 97, where
    /// frames that wander raise a hump; the larger.
    /// </summary>
    public static double About(IReadOnlyList<WeightedTimes> parts, double frequency, double span)
    {
        const int skipped = 3;
        return Math.Max(Mean(12 - skipped, 1), Mean(33, 3));

        double Mean(int cells, int apart)
        {
            Span<double> below = stackalloc double[cells];
            Span<double> above = stackalloc double[cells];
            below.Clear();
            above.Clear();
            foreach (var part in parts)
            {
                AddGrid(part, frequency - ((skipped + (apart * (cells - 1)) + 1) / span), apart / span, below);
                AddGrid(part, frequency + ((skipped + 1) / span), apart / span, above);
            }

            return (Sum(below) + Sum(above)) / (2 * cells);
        }

        static double Sum(Span<double> values)
        {
            var sum = 0.0;
            foreach (var value in values)
            {
                sum += value;
            }

            return sum;
        }
    }

    // Every press turns by the same angle from one frequency of the grid to the next.
    private static void AddGrid(WeightedTimes part, double first, double step, Span<double> power)
    {
        var points = power.Length;
        Span<double> re = stackalloc double[points];
        Span<double> im = stackalloc double[points];
        re.Clear();
        im.Clear();
        for (var i = 0; i < part.Count; i++)
        {
            if (part.Weights[i] == 0)
            {
                continue;
            }

            var time = part.Times[i] - part.Mean;
            var (sine, cosine) = SinCosCycles(first * time);
            var (turnSine, turnCosine) = SinCosCycles(step * time);
            var (x, y) = (part.Weights[i] * cosine, part.Weights[i] * sine);
            for (var k = 0; k < points; k++)
            {
                re[k] += x;
                im[k] += y;
                (x, y) = ((x * turnCosine) - (y * turnSine), (x * turnSine) + (y * turnCosine));
            }
        }

        for (var k = 0; k < points; k++)
        {
            power[k] += 2 * ((re[k] * re[k]) + (im[k] * im[k])) / part.SquaredWeights;
        }
    }

    private static (double Sine, double Cosine) SinCosCycles(double cycles) => Math.SinCos(2 * Math.PI * (cycles - Math.Floor(cycles)));
}
