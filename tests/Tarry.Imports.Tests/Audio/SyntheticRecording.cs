using Tarry.Metrology;

namespace Tarry.Imports.Tests.Audio;

/// <summary>
/// A made-up recording whose truth is known: clicks (3 kHz, decaying with 1 ms) on the first channel, each answered on the second by a light
/// that rises to 1 with a time constant and goes out later. The truth of a light is when it reaches half its height.
/// </summary>
internal sealed record SyntheticRecording
{
    public required int SampleRate { get; init; }

    public ulong Seed { get; init; } = 1;

    public int Presses { get; init; } = 100;

    /// <summary>Height over the noise of a sample, in decibels; of both channels.</summary>
    public double SignalToNoiseDb { get; init; } = 40;

    public double Hum { get; init; }

    public double ModulationHz { get; init; }

    public double ModulationDepth { get; init; }

    public double TimeConstantMs { get; init; } = 0.3;

    public double CouplingCornerHz { get; init; }

    /// <summary>Presses without an answer: every so many; 0 for none.</summary>
    public int MissEvery { get; init; }

    public double LongestLatencyMs { get; init; } = 40;

    public double PressIntervalMs { get; init; } = 400;

    public bool WithoutPresses { get; init; }

    /// <summary>Press times in seconds and latencies in seconds; NaN where the light stays dark.</summary>
    public (double Press, double Latency)[] Truth()
    {
        var generator = SeededGenerator.ForPart(Seed, 1);
        return [.. Enumerable.Range(0, WithoutPresses ? 0 : Presses).Select(index =>
        {
            var press = 0.5 + (PressIntervalMs / 1000 * (index + (0.2 * generator.NextDouble())));
            var latency = (10 + ((LongestLatencyMs - 10) * generator.NextDouble())) / 1000;
            return (press, MissEvery > 0 && index % MissEvery == MissEvery - 1 ? double.NaN : latency);
        })];
    }

    public (float[] Press, float[] Response) Samples()
    {
        var truth = Truth();
        var noise = Math.Pow(10, -SignalToNoiseDb / 20);
        var generator = SeededGenerator.ForPart(Seed, 2);
        var length = (int)((0.5 + (PressIntervalMs / 1000 * (Presses + 1)) + 0.7) * SampleRate);
        var (click, light) = (new double[length], new double[length]);
        foreach (var (press, latency) in truth)
        {
            var size = 0.9 + (0.2 * generator.NextDouble());
            for (var index = (int)Math.Ceiling(press * SampleRate); index < Math.Min(length, (press + 0.02) * SampleRate); index++)
            {
                var t = ((double)index / SampleRate) - press;
                click[index] += size * Math.Exp(-t / 0.001) * Math.Sin(2 * Math.PI * 3_000 * t);
            }

            var tau = TimeConstantMs / 1000;
            var begins = press + latency - (tau * Math.Log(2));
            for (var index = double.IsNaN(latency) ? length : (int)Math.Ceiling(begins * SampleRate); index < Math.Min(length, (begins + 0.4) * SampleRate); index++)
            {
                var t = ((double)index / SampleRate) - begins;
                const double lit = 0.15;
                light[index] += t < lit ? 1 - Math.Exp(-t / tau) : (1 - Math.Exp(-lit / tau)) * Math.Exp(-(t - lit) / tau);
            }
        }

        var (pressSamples, responseSamples) = (new float[length], new float[length]);
        var (phase, modulation) = (2 * Math.PI * generator.NextDouble(), 2 * Math.PI * generator.NextDouble());
        var (low, rate) = (0.0, 2 * Math.PI * CouplingCornerHz / SampleRate);
        for (var index = 0; index < length; index++)
        {
            var t = (double)index / SampleRate;
            var cycle = (2 * Math.PI * 50.02 * t) + phase;
            var hum = Hum * (Math.Sin(cycle) + (0.3 * Math.Sin((3 * cycle) + 1)) + (0.15 * Math.Sin(2 * cycle)));
            var shown = light[index] * (1 + (ModulationDepth * Math.Sin((2 * Math.PI * ModulationHz * t) + modulation)));
            low += rate * (shown - low);
            pressSamples[index] = (float)(0.3 * (click[index] + hum + (noise * generator.NextNormal())));
            responseSamples[index] = (float)(0.3 * ((CouplingCornerHz > 0 ? shown - low : shown + 0.05) + hum + (noise * generator.NextNormal())));
        }

        return (pressSamples, responseSamples);
    }

    /// <summary>The recording as a WAV file of 32-bit floating point.</summary>
    public byte[] Wave()
    {
        var (press, response) = Samples();
        return WaveBytes.Float(SampleRate, press, response);
    }
}
