namespace Tarry.Statistics.Edges;

/// <summary>Finds when a light became brighter (or darker), below noise, mains hum and the modulation of a backlight.</summary>
/// <remarks>
/// First coarsely, at some 8,000 samples a second: the difference to one mains period before, which cancels hum with all its harmonics,
/// averaged over 2 ms. Then the background before the change is fitted and taken off (<see cref="PeriodicBackground"/>), the new level is the
/// median of 2 ms means behind the change, the modulation's period is estimated where it is bright and averaged out by
/// a mean over one period, and the middle between the levels is where a polynomial through the rise crosses it. An input with a capacitor in it
/// is made good by x + 2 pi f integral of x. What is weak, doubled or unsteady is said to be so. No published source; the accuracy is measured
/// in <c>docs/formats/audio.md</c>.
/// </remarks>
public sealed class LightStepFinder
{
    /// <summary>Samples must reach so far before the press, in seconds: the longest stretch of background and a mains period.</summary>
    public const double Before = 0.085;

    /// <summary>And so far behind the last moment looked at.</summary>
    public const double Behind = 0.045;

    private const double CoarseHz = 8_000;
    private const double MeanSeconds = 0.002;
    private const double Sure = 8;
    private const double Possible = 5;
    private const int EventsForModulation = 6;
    private readonly double sampleRateHz;
    private readonly double sign;
    private readonly double? couplingCornerHz;
    private readonly List<double> periods = [];
    private readonly int every;
    private readonly double coarseHz;
    private double[] prepared = [];
    private int estimated;

    /// <summary>A finder.</summary>
    /// <param name="sampleRateHz">Samples a second.</param>
    /// <param name="rising">Whether the light becomes brighter, or the signal larger.</param>
    /// <param name="couplingCornerHz">The calibrated corner of a coupling capacitor; null for none.</param>
    public LightStepFinder(double sampleRateHz, bool rising, double? couplingCornerHz)
    {
        this.sampleRateHz = sampleRateHz;
        this.couplingCornerHz = couplingCornerHz;
        sign = rising ? 1 : -1;
        every = Math.Max(1, (int)(sampleRateHz / CoarseHz));
        coarseHz = sampleRateHz / every;
    }

    /// <summary>The frequency of the mains; null until it is known.</summary>
    public double? MainsHz { get; set; }

    /// <summary>The level of silence, taken off before a capacitor is made good.</summary>
    public double Offset { get; set; }

    /// <summary>The period of the backlight's modulation, in seconds; null where none was found.</summary>
    public double? ModulationSeconds => periods.Count > 0 && 2 * periods.Count > estimated ? periods.Order().ElementAt(periods.Count / 2) : null;

    /// <summary>Looks for a change.</summary>
    /// <param name="recorded">The stretch.</param>
    /// <param name="from">The first sample at which it may be.</param>
    /// <param name="to">The last.</param>
    public LightStep Find(ReadOnlySpan<float> recorded, int from, int to)
    {
        var samples = Prepared(recorded);
        var coarse = new CoarseLight(samples, every, coarseHz, MainsHz, MeanSeconds);
        var step = coarse.Step(from / every, to / every);
        if (step.SignalToNoise < Sure)
        {
            return new LightStep(step.SignalToNoise < Possible ? LightStepKind.None : LightStepKind.Weak, step.Index * every, step.SignalToNoise, 0);
        }

        var found = new LightStep(LightStepKind.Several, step.Index * every, step.SignalToNoise, step.Edges);
        if (step.IsAmbiguous)
        {
            return found;
        }

        if (Background(coarse, step) is not var (background, beginning))
        {
            return found with { Kind = LightStepKind.Unsteady };
        }

        var level = coarse.LevelBehind(step, background, beginning);
        if (level is not { } height || height < 0.6 * step.Height)
        {
            return found with { Kind = LightStepKind.TooShort };
        }

        var rise = new LightRise(samples, step.Index * every, sampleRateHz, sample => background.At((sample - (beginning * every) - ((every - 1) / 2.0)) / sampleRateHz));
        var period = Modulation(rise, height);
        return rise.Middle(height, period) is { } middle
            ? found with { Kind = LightStepKind.Found, Sample = middle }
            : found with { Kind = LightStepKind.Weak };
    }

    // In an array that is kept: one for each press would be as much as the recording.
    private ReadOnlySpan<double> Prepared(ReadOnlySpan<float> recorded)
    {
        prepared = prepared.Length >= recorded.Length ? prepared : new double[recorded.Length];
        var samples = prepared.AsSpan(0, recorded.Length);
        SampleConversion.Widen(recorded, samples);
        if (couplingCornerHz is { } corner)
        {
            MakeGood(samples, 2 * Math.PI * corner / sampleRateHz);
        }
        else if (sign < 0)
        {
            foreach (ref var sample in samples)
            {
                sample = -sample;
            }
        }

        return samples;
    }

    // What a capacitor took: x + 2 pi f integral of x.
    private void MakeGood(Span<double> samples, double rate)
    {
        var (offset, direction, integral) = (Offset, sign, 0.0);
        foreach (ref var sample in samples)
        {
            var value = sample - offset;
            integral += value;
            sample = direction * (value + (rate * integral));
        }
    }

    // The longest stretch before the change in which the light was steady.
    private (PeriodicBackground Background, int Beginning)? Background(CoarseLight coarse, CoarseStep step)
    {
        foreach (var seconds in new[] { 0.06, 0.04, 0.02, 0.01 })
        {
            var beginning = step.Foot - (int)(seconds * coarseHz);
            if (beginning < 0)
            {
                continue;
            }

            var stretch = coarse.Samples[beginning..step.Foot];
            var background = PeriodicBackground.Fit(stretch, coarseHz, seconds >= 0.02 ? MainsHz : null, couplingCornerHz is not null);
            if (background.Residual < Math.Max(3 * coarse.Noise, 0.1 * step.Height))
            {
                return (background, beginning);
            }
        }

        return null;
    }

    private double? Modulation(LightRise rise, double height)
    {
        if (estimated >= EventsForModulation)
        {
            return ModulationSeconds;
        }

        estimated++;
        if (rise.ModulationHz(height) is not { } frequency)
        {
            return null;
        }

        periods.Add(1 / frequency);
        return 1 / frequency;
    }
}
