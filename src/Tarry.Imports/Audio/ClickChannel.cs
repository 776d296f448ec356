using MathNet.Numerics.Statistics;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.Audio;

/// <summary>Finds the clicks, or the steps of a contact, in a channel as it is read.</summary>
/// <remarks>
/// The channel is filtered (high-pass, 800 Hz, causal) and its energy is summed over 2 ms, every millisecond. A click is where that exceeds
/// the median of the last second by far more than noise does: sure from 14, in doubt from 7 standard deviations of the energy of noise. Its onset
/// is picked in the 4 ms before the strongest 2 ms up to the peak, and is then set right by the mean of all clicks (<see cref="ClickTemplate"/>).
/// </remarks>
internal sealed class ClickChannel
{
    private const double CornerHz = 800;
    private const double SilentAmplitude = 1e-5;
    private const int GateMilliseconds = 2;
    private const int RememberedMilliseconds = 1_024;
    private const int MillisecondsBetweenMedians = 128;
    private const int FewestForMedian = 64;

    /// <summary>Bytes of clicks that are kept for their comparison.</summary>
    private const long MostStretchBytes = 64_000_000;

    /// <summary>Presses that no session holds.</summary>
    private const int MostClicks = 2_000_000;
    private readonly HighPassFilter filter;
    private readonly SampleHistory filtered;
    private readonly double hz;
    private readonly int hop;
    private readonly int quietMilliseconds;
    private readonly double sure;
    private readonly double possible;
    private readonly List<double> energies = [];
    private readonly float[] block;
    private double hopEnergy;
    private int hopSamples;
    private long hops;
    private double noise;
    private long quietUntil;
    private long? gate;
    private double gateEnergy;
    private double lastHopEnergy;
    private long stretchBytes;
    private ClickTemplate? template;
    private bool templateTried;

    public ClickChannel(double sampleRateHz, double quietSeconds)
    {
        hz = sampleRateHz;
        hop = (int)(sampleRateHz / 1000);
        filter = new HighPassFilter(CornerHz, sampleRateHz);
        filtered = new SampleHistory(32 * hop);
        block = new float[hop];
        quietMilliseconds = Math.Max(GateMilliseconds, (int)Math.Ceiling(quietSeconds * 1000));
        var deviation = Math.Sqrt(2.0 / (GateMilliseconds * hop));
        (possible, sure) = (1 + (7 * deviation), Math.Max(3, 1 + (14 * deviation)));
    }

    /// <summary>The clicks so far, in order.</summary>
    public List<DetectedClick> Clicks { get; } = [];

    /// <summary>Whether there are more than can be presses.</summary>
    public bool IsOverfull => Clicks.Count > MostClicks;

    /// <summary>Whether the clicks were timed by their mean form.</summary>
    public bool UsesTemplate => template is not null;

    public void Take(ReadOnlySpan<float> samples)
    {
        while (!samples.IsEmpty)
        {
            var count = Math.Min(samples.Length, hop - hopSamples);
            hopEnergy += filter.Apply(samples[..count], block);
            filtered.Append(block.AsSpan(0, count));
            samples = samples[count..];
            hopSamples += count;
            if (hopSamples == hop)
            {
                EndHop();
            }
        }
    }

    /// <summary>The recording ends: a click that is under way is taken, and all are timed by their mean form.</summary>
    public void End()
    {
        if (gate is not null)
        {
            TakeClick();
        }

        MakeTemplate();
    }

    private void EndHop()
    {
        var energy = hopEnergy + lastHopEnergy;
        (lastHopEnergy, hopEnergy, hopSamples) = (hopEnergy, 0, 0);
        hops++;
        Remember(lastHopEnergy);
        if (hops < GateMilliseconds || energies.Count < FewestForMedian)
        {
            return;
        }

        var floor = Math.Max(GateMilliseconds * noise, GateMilliseconds * hop * SilentAmplitude * SilentAmplitude);
        var start = hops - GateMilliseconds;
        if (gate is { } begun)
        {
            if (energy > gateEnergy)
            {
                (gate, gateEnergy) = (start, energy);
            }
            else if (start - begun >= 2 * GateMilliseconds)
            {
                TakeClick();
            }
        }
        else if (start >= quietUntil && energy > possible * floor)
        {
            (gate, gateEnergy) = (start, energy);
        }
    }

    private void Remember(double energy)
    {
        // The newest in the place of the oldest; the median is found anew now and then.
        if (energies.Count < RememberedMilliseconds)
        {
            energies.Add(energy);
        }
        else
        {
            energies[(int)(hops % RememberedMilliseconds)] = energy;
        }

        if (hops % MillisecondsBetweenMedians == 0 || energies.Count == FewestForMedian)
        {
            noise = ArrayStatistics.OrderStatisticInplace([.. energies], (energies.Count / 2) + 1);
        }
    }

    private void TakeClick()
    {
        var start = gate!.Value * hop;
        var isSure = gateEnergy > sure * Math.Max(GateMilliseconds * noise, GateMilliseconds * hop * SilentAmplitude * SilentAmplitude);
        gate = null;
        var loud = filtered.Between(start, start + (GateMilliseconds * hop));
        var peak = 0;
        for (var index = 0; index < loud.Length; index++)
        {
            peak = Math.Abs(loud[index]) > Math.Abs(loud[peak]) ? index : peak;
        }

        var from = Math.Max(filtered.First, start - (4 * hop));
        var end = start + peak + Math.Max(8, hop / 4);
        var onset = from + (OnsetPicker.Pick(Doubles(filtered.Between(from, end))) ?? (start + peak - from));
        quietUntil = (long)(onset / hop) + quietMilliseconds;
        var click = new DetectedClick(onset, isSure);
        Clicks.Add(click);
        if (!isSure)
        {
            return;
        }

        var stretchFrom = (long)onset - (2 * hop);
        var stretch = filtered.Between(stretchFrom, stretchFrom + (6 * hop));
        if (stretch.Length < 6 * hop)
        {
            return;
        }

        click.Stretch = stretch.ToArray();
        stretchBytes += stretch.Length * sizeof(float);
        if (templateTried)
        {
            Align(click);
        }
        else if (stretchBytes > MostStretchBytes)
        {
            MakeTemplate();
        }
    }

    private void MakeTemplate()
    {
        if (templateTried)
        {
            return;
        }

        templateTried = true;
        template = ClickTemplate.Of([.. Clicks.Select(click => click.Stretch).OfType<float[]>().Take(1_000)], hop);
        Clicks.ForEach(Align);
    }

    private void Align(DetectedClick click)
    {
        if (click.Stretch is { } stretch)
        {
            click.Onset = template?.OnsetIn(stretch) is { } onset ? Math.Floor(click.Sample) - (2 * hop) + onset : click.Sample;
            click.Stretch = null;
        }
    }

    private static double[] Doubles(ReadOnlySpan<float> samples)
    {
        var doubles = new double[samples.Length];
        SampleConversion.Widen(samples, doubles);
        return doubles;
    }
}
