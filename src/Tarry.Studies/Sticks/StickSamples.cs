namespace Tarry.Studies.Sticks;

/// <summary>The positions of a stick in order of time, as its source says them: counts, not shares.</summary>
public sealed class StickSamples
{
    private readonly long[] ticks;
    private readonly double[] x;
    private readonly double[] y;
    private readonly double[] stimulus;
    private readonly double[] stimulusY;

    /// <summary>Samples, one a report or reading; the arrays are not copied, and must not change afterwards.</summary>
    /// <param name="ticks">When each came, in ticks of the session's clock; none goes back.</param>
    /// <param name="x">The x axis, in counts.</param>
    /// <param name="y">The y axis, in counts, up is greater.</param>
    /// <param name="stimulus">The true angle in degrees or level of x, NaN where not known at that moment; null where the recording has none.</param>
    /// <param name="stimulusY">The true level of y likewise; null but for levels.</param>
    /// <exception cref="ArgumentException">The arrays differ in length, time goes back, or a position is not finite.</exception>
    public StickSamples(long[] ticks, double[] x, double[] y, double[]? stimulus = null, double[]? stimulusY = null)
    {
        ArgumentNullException.ThrowIfNull(ticks);
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        RequireLength(x, ticks.Length, nameof(x));
        RequireLength(y, ticks.Length, nameof(y));
        RequireLength(stimulus ?? x, ticks.Length, nameof(stimulus));
        RequireLength(stimulusY ?? x, ticks.Length, nameof(stimulusY));
        for (var index = 0; index < ticks.Length; index++)
        {
            if (index > 0 && ticks[index] < ticks[index - 1])
            {
                throw new ArgumentException($"Sample {index} is of tick {ticks[index]}, before the one that precedes it; put the samples in order of time.", nameof(ticks));
            }

            if (!double.IsFinite(x[index]) || !double.IsFinite(y[index]))
            {
                throw new ArgumentException($"Sample {index} has no finite position.", nameof(x));
            }
        }

        (this.ticks, this.x, this.y) = (ticks, x, y);
        (this.stimulus, this.stimulusY) = (stimulus ?? [], stimulusY ?? []);
    }

    /// <summary>How many.</summary>
    public int Count => ticks.Length;

    /// <summary>When each came, in ticks of the session's clock.</summary>
    public ReadOnlySpan<long> Ticks => ticks;

    /// <summary>The x axis, in counts.</summary>
    public ReadOnlySpan<double> X => x;

    /// <summary>The y axis, in counts, up is greater.</summary>
    public ReadOnlySpan<double> Y => y;

    /// <summary>The true angle in degrees or level of x, NaN where not known at that moment; empty where the recording has none.</summary>
    public ReadOnlySpan<double> Stimulus => stimulus;

    /// <summary>The true level of y, NaN where not known; empty but for levels.</summary>
    public ReadOnlySpan<double> StimulusY => stimulusY;

    private static void RequireLength(double[] column, int expected, string name)
    {
        if (column.Length != expected)
        {
            throw new ArgumentException($"The column has {column.Length} values for {expected} samples.", name);
        }
    }
}
