using Tarry.Statistics.Tests.SlotGrid;

namespace Tarry.SlotGridSimulations;

/// <summary>The cases that are simulated.</summary>
internal static class Families
{
    private static readonly double[] Intervals = [1, 1.4, 2, 4, 8, 10];

    public static IEnumerable<(string Name, SimulatedSlots Device)> Of(string family) => family switch
    {
        "plain" => Intervals.Select(slot => ($"T {slot}", new SimulatedSlots { SlotMs = slot })),
        "shown" => Each([0, 0.1, 0.2, 0.3], (slot, jitter) => new SimulatedSlots { SlotMs = slot, FrameJitterMs = jitter }),
        "jittered" => Each([0.05, 0.1, 0.2, 0.3], (slot, jitter) => new SimulatedSlots { SlotMs = slot, Frames = FrameKind.Jittered, FrameJitterMs = jitter }),
        "walking" => Each([0.1, 0.3, 0.03, 0.01, 0.003], (slot, jitter) => new SimulatedSlots { SlotMs = slot, Frames = FrameKind.Walking, FrameJitterMs = jitter }),
        "strolling" => Each([0.02, 0.015], (slot, jitter) => new SimulatedSlots { SlotMs = slot, Frames = FrameKind.Walking, FrameJitterMs = jitter }),
        "free" => Each([0], (slot, _) => new SimulatedSlots { SlotMs = slot, Frames = FrameKind.FreeRunning }),
        "none" => Each([0.05, 0.3], (slot, noise) => new SimulatedSlots { SlotMs = slot, Frames = FrameKind.None, NoiseMs = noise }),
        "wander" => Each([0.3, 1, 3], (slot, ppm) => new SimulatedSlots { SlotMs = slot, WanderPpm = ppm, Frames = FrameKind.Jittered, FrameJitterMs = 0.1 }),
        "slotless" => new[] { FrameKind.None, FrameKind.Shown, FrameKind.Jittered, FrameKind.Walking, FrameKind.FreeRunning }
            .Select(frames => ($"no slots, {frames}", new SimulatedSlots { SlotMs = null, Frames = frames })),
        "hard" => Each([0], (slot, _) => new SimulatedSlots { SlotMs = slot, RetryShare = 0.03, LateShare = 0.02, MissedShare = 0.01, LumpShare = 0.03, Frames = FrameKind.Jittered }),
        "radio" => Each([0.1, 0.3, 0.5], (slot, jitter) => new SimulatedSlots { SlotMs = slot, SlotJitterMs = jitter, RetryShare = 0.1, Frames = FrameKind.Jittered }),
        "ratio" => new[] { (8, 4.0), (4, 4.0), (2, 4.0), (1, 4.0), (10, 4.0), (1, 4.5), (3, 4.5), (1.5, 4.5) }
            .Select(pair => ($"T {pair.Item1} frames {pair.Item2}", new SimulatedSlots { SlotMs = pair.Item1, FrameMs = pair.Item2, Frames = FrameKind.Jittered })),
        "refresh" => Each([6.94], (slot, refresh) => new SimulatedSlots { SlotMs = slot, RefreshMs = refresh, Frames = FrameKind.Jittered }),
        "beat" => new[] { (8, 4.0), (4, 4.0), (2, 4.0), (1, 4.0), (3, 4.5), (10, 4.0) }.SelectMany(pair => new[] { 0.0, 1, 10 }
            .Select(ppm => ($"T {pair.Item1} frames {pair.Item2} ppm {ppm}", new SimulatedSlots { SlotMs = pair.Item1, FrameMs = pair.Item2, SlotPpm = -20 + ppm, Frames = FrameKind.Jittered }))),
        "small" => new[] { 0.125, 0.25, 0.5, 0.7 }.Select(slot => ($"T {slot}", new SimulatedSlots { SlotMs = slot, Frames = FrameKind.Jittered, FrameJitterMs = 0.05 })),
        _ => throw new ArgumentException($"{family} is no family; see Families.cs.", nameof(family)),
    };

    private static IEnumerable<(string Name, SimulatedSlots Device)> Each(double[] values, Func<double, double, SimulatedSlots> device) =>
        values.SelectMany(value => Intervals.Select(slot => ($"T {slot} with {value}", device(slot, value))));
}
