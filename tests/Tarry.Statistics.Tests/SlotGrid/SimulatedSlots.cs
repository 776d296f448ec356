using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Tests.SlotGrid;

/// <summary>A device with report slots in front of frames, event by event, with known truth.</summary>
public sealed record SimulatedSlots
{
    /// <summary>The report interval; null for a device without slots.</summary>
    public double? SlotMs { get; init; }

    public double SlotPpm { get; init; } = 50;

    public double SlotJitterMs { get; init; }

    /// <summary>How far the slot clock's rate strays in ten minutes, by a random walk.</summary>
    public double WanderPpm { get; init; }

    public FrameKind Frames { get; init; } = FrameKind.Shown;

    public double FrameMs { get; init; } = 4.1;

    public double FramePpm { get; init; } = 20;

    public double FrameJitterMs { get; init; } = 0.1;

    /// <summary>A third grid behind the frames; 0 for none.</summary>
    public double RefreshMs { get; init; }

    public double NoiseMs { get; init; } = 0.3;

    /// <summary>The share of responses that are sent again one interval later, or a third of them two.</summary>
    public double RetryShare { get; init; }

    /// <summary>The share of responses that are late by an exponential tail of 10 ms.</summary>
    public double LateShare { get; init; }

    /// <summary>The share of responses in a second lump, 20 ms later.</summary>
    public double LumpShare { get; init; }

    public double MissedShare { get; init; }

    public double BeforeMs { get; init; } = 1;

    public double BehindMs { get; init; } = 5;

    public double TickMs { get; init; } = 0.004;

    public int Trials { get; init; } = 2000;

    public double ShortestMs { get; init; } = 70;

    public double LongestMs { get; init; } = 120;

    public double TrueIntervalMs => (SlotMs ?? 0) / (1 + (SlotPpm * 1e-6));

    public double FixedMs => BeforeMs + BehindMs;

    /// <summary>One session.</summary>
    public PressSeries Session(string sitting, SeededGenerator random)
    {
        var presses = new double[Trials];
        var at = 0.0;
        for (var i = 0; i < Trials; i++)
        {
            at += ShortestMs + ((LongestMs - ShortestMs) * random.NextDouble());
            presses[i] = Ticks(at + (TickMs / 2));
        }

        var wander = Wander(at, random);
        var slotPhase = random.NextDouble() * (SlotMs ?? 1);
        var framePhase = random.NextDouble() * FrameMs;
        var refreshPhase = random.NextDouble() * 6.94;
        var grid = new FrameTimes(this, framePhase, at, random);
        var (kept, latencies) = (new List<double>(), new List<double>());
        foreach (var press in presses)
        {
            var x = press + BeforeMs;
            if (SlotMs is { } slot)
            {
                var error = Error(x, wander);
                x = Next(x + error, slot, slotPhase) - error;
                x += SlotJitterMs > 0 ? SlotJitterMs * random.NextNormal() : 0;
            }

            x += random.NextDouble() < RetryShare ? (SlotMs ?? 8) * (random.NextDouble() < 0.3 ? 2 : 1) : 0;
            x += random.NextDouble() < LumpShare ? 20 : 0;
            x = grid.Show(x, random);
            x = RefreshMs > 0 ? Next(x, RefreshMs * (1 + 35e-6), refreshPhase) : x;
            x += BehindMs + (NoiseMs * random.NextNormal());
            x += random.NextDouble() < LateShare ? -10 * Math.Log(1 - random.NextDouble()) : 0;
            if (random.NextDouble() >= MissedShare)
            {
                kept.Add(press);
                latencies.Add(Ticks(x - press));
            }
        }

        return new PressSeries(sitting, kept.ToArray(), latencies.ToArray());
    }

    internal static double Next(double time, double interval, double phase) =>
        (Math.Ceiling((time - phase) / interval) * interval) + phase;

    private double Ticks(double ms) => Math.Round(ms / TickMs) * TickMs;

    // The slot clock's error in milliseconds, once a second.
    private double[] Wander(double untilMs, SeededGenerator random)
    {
        var errors = new double[(int)(untilMs / 1000) + 4];
        var ppm = SlotPpm;
        for (var i = 1; i < errors.Length; i++)
        {
            errors[i] = errors[i - 1] + (ppm * 1e-3);
            ppm += WanderPpm / Math.Sqrt(600) * random.NextNormal();
        }

        return errors;
    }

    private static double Error(double timeMs, double[] wander)
    {
        var second = (int)(timeMs / 1000);
        var part = (timeMs / 1000) - second;
        return wander[second] + (part * (wander[second + 1] - wander[second]));
    }
}
