using System.Runtime.Intrinsics;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.Audio;

/// <summary>Looks for the light's answer to each press, once enough of the recording behind it is there.</summary>
internal sealed class LightResponses
{
    private const double SecondsForMains = 2;
    private const int MainsHarmonics = 3;
    private readonly LightStepFinder finder;
    private readonly SampleHistory history;
    private readonly double hz;
    private readonly long longest;
    private readonly long before;
    private readonly long behind;
    private double sum;

    public LightResponses(double sampleRateHz, TwoChannelOptions options)
    {
        hz = sampleRateHz;
        finder = new LightStepFinder(sampleRateHz, options.ResponseEdge != SignalEdge.Falling, options.CouplingCornerHz);
        longest = (long)(options.Window.LongestMs / 1000 * hz);
        (before, behind) = ((long)(LightStepFinder.Before * hz), (long)(LightStepFinder.Behind * hz));

        // A press is answered up to a block later than it could be.
        Kept = (int)Math.Max(before + longest + behind + WaveReader.BlockFrames, SecondsForMains * hz);
        history = new SampleHistory(Kept);
    }

    /// <summary>How many samples of the past are needed.</summary>
    public int Kept { get; }

    /// <summary>How many samples must have come before a press can be looked at.</summary>
    public long Reach => longest + behind;

    public double? MainsHz => finder.MainsHz;

    public double? ModulationSeconds => finder.ModulationSeconds;

    public void Take(ReadOnlySpan<float> block)
    {
        history.Append(block);
        sum += Sum(block);
        finder.Offset = sum / history.End;
        if (finder.MainsHz is null && history.End >= SecondsForMains * hz)
        {
            finder.MainsHz = Mains(history.Between(0, history.End));
        }
    }

    /// <summary>Samples of the channel, for a picture.</summary>
    public ReadOnlySpan<float> Between(long from, long to) => history.Between(from, to);

    /// <summary>Whether the first press can be looked at, or has to wait for more of the recording.</summary>
    public bool CanAnswer(double press) => history.End >= press + Reach && finder.MainsHz is not null;

    /// <summary>What came of a press; the sample is counted from the beginning of the recording.</summary>
    /// <param name="press">The press's sample.</param>
    /// <param name="ended">Whether the recording has ended, so that no more comes.</param>
    public (LightStep Step, bool IsCut) Answer(double press, bool ended)
    {
        var from = Math.Max(history.First, (long)press - before);
        var stretch = history.Between(from, (long)press + longest + behind);
        var last = Math.Min((long)press + longest, history.End - behind) - from;
        var first = (long)press - from;
        if (last <= first)
        {
            return (default, true);
        }

        var step = finder.Find(stretch, (int)first, (int)last);
        var isCut = ended && step.Kind == LightStepKind.None && history.End < press + longest;
        return (step with { Sample = step.Sample + from }, isCut);
    }

    // In eight parts, since each addition waits for the one before; the same eight on every machine.
    private static double Sum(ReadOnlySpan<float> block)
    {
        var (low, high) = (Vector256<double>.Zero, Vector256<double>.Zero);
        for (; block.Length >= Vector256<float>.Count; block = block[Vector256<float>.Count..])
        {
            var (first, second) = Vector256.Widen(Vector256.Create(block));
            (low, high) = (low + first, high + second);
        }

        var parts = low + high;
        var sum = parts[0] + parts[1] + parts[2] + parts[3];
        foreach (var sample in block)
        {
            sum += sample;
        }

        return sum;
    }

    // The frequency about 50 or 60 Hz that explains most; harmonics count by their square, since changes of light fill the low end.
    private double Mains(ReadOnlySpan<float> samples)
    {
        var every = Math.Max(1, (int)(hz / 2_000));
        var coarse = new double[samples.Length / every];
        for (var index = 0; index < coarse.Length; index++)
        {
            foreach (var sample in samples.Slice(index * every, every))
            {
                coarse[index] += sample;
            }
        }

        var (best, most) = (50.0, -1.0);
        foreach (var nominal in new[] { 50.0, 60.0 })
        {
            for (var offset = -0.3; offset <= 0.3; offset += 0.05)
            {
                var power = 0.0;
                for (var harmonic = 1; harmonic <= MainsHarmonics; harmonic++)
                {
                    power += harmonic * harmonic * Power(coarse, harmonic * (nominal + offset) * every / hz);
                }

                (best, most) = power > most ? (nominal + offset, power) : (best, most);
            }
        }

        return best;
    }

    private static double Power(double[] samples, double cyclesPerSample)
    {
        double real = 0, imaginary = 0;
        for (var index = 0; index < samples.Length; index++)
        {
            var window = 1 - Math.Cos(2 * Math.PI * (index + 0.5) / samples.Length);
            var (sine, cosine) = Math.SinCos(2 * Math.PI * cyclesPerSample * index);
            real += samples[index] * window * cosine;
            imaginary += samples[index] * window * sine;
        }

        return (real * real) + (imaginary * imaginary);
    }
}
