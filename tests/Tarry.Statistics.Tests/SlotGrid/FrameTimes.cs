using Tarry.Metrology;

namespace Tarry.Statistics.Tests.SlotGrid;

/// <summary>When the frames of a simulated chain come.</summary>
internal sealed class FrameTimes
{
    private readonly SimulatedSlots chain;
    private readonly double phase;
    private readonly double interval;
    private readonly double[] edges = [];

    public FrameTimes(SimulatedSlots chain, double phase, double untilMs, SeededGenerator random)
    {
        this.chain = chain;
        this.phase = phase;
        interval = chain.FrameMs * (1 + (chain.FramePpm * 1e-6));
        if (chain.Frames is FrameKind.Walking or FrameKind.Jittered)
        {
            edges = new double[(int)((untilMs + 1000) / chain.FrameMs * 1.02)];
            for (var k = 0; k < edges.Length; k++)
            {
                var from = chain.Frames == FrameKind.Walking && k > 0 ? edges[k - 1] + interval : phase + (k * interval);
                edges[k] = from + (chain.FrameJitterMs * random.NextNormal());
            }

            Array.Sort(edges);
        }
    }

    public double Show(double time, SeededGenerator random) => chain.Frames switch
    {
        FrameKind.None => time,
        FrameKind.FreeRunning => time + (random.NextDouble() * interval),
        FrameKind.Shown => SimulatedSlots.Next(time, interval, phase) + (chain.FrameJitterMs * random.NextNormal()),
        _ => edges[First(time)],
    };

    private int First(double time)
    {
        var at = Array.BinarySearch(edges, time);
        return Math.Min(at < 0 ? ~at : at, edges.Length - 1);
    }
}
