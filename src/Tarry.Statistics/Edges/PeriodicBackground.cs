namespace Tarry.Statistics.Edges;

/// <summary>What a light channel shows when nothing happens: a level, a slow drift, and the hum of the mains with its harmonics.</summary>
/// <remarks>
/// Least squares of x(t) = c + d t + sum over k = 1..6 of a_k cos(2 pi k f t) + b_k sin(2 pi k f t) over a stretch before an event, and
/// read on from there. Where the hum makes the residual no smaller than chance would, the level alone is used.
/// </remarks>
public sealed class PeriodicBackground
{
    private const int Harmonics = 6;
    private readonly double[] weights;
    private readonly double frequency;
    private readonly bool drifts;

    private PeriodicBackground(double[] weights, double frequency, bool drifts, double residual) =>
        (this.weights, this.frequency, this.drifts, Residual) = (weights, frequency, drifts, residual);

    /// <summary>Root mean square of what it does not explain.</summary>
    public double Residual { get; }

    /// <summary>Fits it.</summary>
    /// <param name="samples">The stretch.</param>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="mainsHz">The frequency of the mains; null for none.</param>
    /// <param name="drifts">Whether there is a slow drift.</param>
    public static PeriodicBackground Fit(ReadOnlySpan<double> samples, double sampleRateHz, double? mainsHz, bool drifts)
    {
        var level = Solve(samples, sampleRateHz, 0, drifts);
        if (mainsHz is not { } hum || samples.Length < 40)
        {
            return level;
        }

        // F of the twelve hum terms; 4 is far beyond chance at these sizes.
        var humming = Solve(samples, sampleRateHz, hum, drifts);
        var (without, with) = (level.Residual * level.Residual, humming.Residual * humming.Residual);
        var freedom = samples.Length - (2 * Harmonics) - 2;
        return (without - with) / (2 * Harmonics) > 4 * with / freedom ? humming : level;
    }

    /// <summary>Its value at a time from the beginning of the stretch, in seconds.</summary>
    public double At(double seconds)
    {
        Span<double> row = stackalloc double[weights.Length];
        Fill(row, seconds, Math.SinCos(2 * Math.PI * frequency * seconds), drifts);
        var value = 0.0;
        for (var index = 0; index < row.Length; index++)
        {
            value += weights[index] * row[index];
        }

        return value;
    }

    private static PeriodicBackground Solve(ReadOnlySpan<double> samples, double sampleRateHz, double frequency, bool drifts)
    {
        var size = 1 + (drifts ? 1 : 0) + (frequency > 0 ? 2 * Harmonics : 0);
        Span<double> row = stackalloc double[size];
        var equations = new NormalEquations(size);
        var (turn, now) = (Math.SinCos(2 * Math.PI * frequency / sampleRateHz), (Sin: 0.0, Cos: 1.0));
        for (var index = 0; index < samples.Length; index++)
        {
            Fill(row, index / sampleRateHz, now, drifts);
            equations.Add(row, samples[index]);
            now = Turned(now, turn);
        }

        // A trace of a ridge: two harmonics of a short stretch may hardly differ. So there is always a solution.
        var (weights, residual) = equations.Solve(ridge: 1e-9)!.Value;
        return new PeriodicBackground(weights, frequency, drifts, residual);
    }

    // The level, the hum by cosine and sine of each harmonic, and the drift last.
    private static void Fill(Span<double> row, double seconds, (double Sin, double Cos) hum, bool drifts)
    {
        row[0] = 1;
        if (drifts)
        {
            row[^1] = seconds;
        }

        var harmonic = hum;
        for (var at = 1; at + 1 < row.Length; at += 2)
        {
            (row[at], row[at + 1]) = (harmonic.Cos, harmonic.Sin);
            harmonic = Turned(harmonic, hum);
        }
    }

    private static (double Sin, double Cos) Turned((double Sin, double Cos) from, (double Sin, double Cos) by) =>
        ((from.Sin * by.Cos) + (from.Cos * by.Sin), (from.Cos * by.Cos) - (from.Sin * by.Sin));
}
