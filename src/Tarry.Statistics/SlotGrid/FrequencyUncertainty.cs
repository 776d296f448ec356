namespace Tarry.Statistics.SlotGrid;

/// <summary>The standard error of the common frequency of several series.</summary>
/// <remarks>
/// Demodulated scores: with e = z e^(-2 pi i f (m - mean)) turned to the phase of its sum, the score of a press is (m - its
/// weighted mean) Im e and the information 2 pi sum (m - mean)^2 Re e. The variance of the sum of scores is taken per press and
/// per twentieth of a series, so that noise which lasts is in it; the larger counts (sandwich estimate: P. J. Huber, Proc. 5th
/// Berkeley Symp. 1, 1967).
/// </remarks>
internal static class FrequencyUncertainty
{
    private const int Blocks = 20;

    // Student's t on the 19 degrees of freedom of one series' blocks.
    private const double Quantile = 2.093;

    // Neither of two crystals holds its rate better than about this through a session (from memory).
    private const double Wander = 0.5e-6;

    /// <summary>Half of the 95 % interval, as a share of the frequency.</summary>
    public static double HalfWidth(IReadOnlyList<WeightedTimes> parts, double frequency)
    {
        var sampling = Quantile * StandardError(parts, frequency) / frequency;
        return Math.Sqrt((sampling * sampling) + (Wander * Wander));
    }

    public static double StandardError(IReadOnlyList<WeightedTimes> parts, double frequency)
    {
        var (perPress, perBlock, information) = (0.0, 0.0, 0.0);
        var blocks = new double[Blocks];
        foreach (var part in parts)
        {
            var (re, im) = LinePower.Sum(part, frequency, part.Mean);
            var size = Math.Sqrt((re * re) + (im * im));
            var n = part.Count;
            var inPhase = new double[n];
            var quadrature = new double[n];
            var (weighted, weights, first, last) = (0.0, 0.0, double.PositiveInfinity, double.NegativeInfinity);
            for (var i = 0; i < n; i++)
            {
                var time = part.Times[i] - part.Mean;
                var cycles = frequency * time;
                var (sine, cosine) = Math.SinCos(2 * Math.PI * (cycles - Math.Floor(cycles)));
                var (x, y) = (part.Weights[i] * cosine, -part.Weights[i] * sine);
                inPhase[i] = ((x * re) + (y * im)) / size;
                quadrature[i] = ((y * re) - (x * im)) / size;
                weighted += time * inPhase[i];
                weights += inPhase[i];
                (first, last) = (Math.Min(first, time), Math.Max(last, time));
            }

            var centre = weighted / weights;
            Array.Clear(blocks);
            for (var i = 0; i < n; i++)
            {
                var time = part.Times[i] - part.Mean;
                var score = (time - centre) * quadrature[i];
                perPress += score * score;
                information += 2 * Math.PI * (time - centre) * (time - centre) * inPhase[i];
                blocks[Math.Min((int)(Blocks * (time - first) / (last - first + 1e-9)), Blocks - 1)] += score;
            }

            foreach (var block in blocks)
            {
                perBlock += block * block;
            }
        }

        return Math.Sqrt(Math.Max(perPress, perBlock)) / Math.Abs(information);
    }
}
