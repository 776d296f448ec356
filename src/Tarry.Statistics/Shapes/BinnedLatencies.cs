using System.Runtime.InteropServices;

namespace Tarry.Statistics.Shapes;

/// <summary>Latencies of several sessions, brought to a common place and counted in bins: what a fit costs does not grow with them.</summary>
/// <remarks>
/// Bins are 0.02 ms wide or wider. A latency recorded in a coarser step is an interval one step wide, so such sessions keep
/// bins of their own, whose edges lie half a step off the recorded values.
/// </remarks>
internal sealed class BinnedLatencies : ILatencyCells
{
    private const double ResolutionThatMattersMs = 0.005;

    private readonly double[] edges;
    private readonly int[] lefts;
    private readonly double[] counts;
    private readonly double[] tails;
    private readonly LateRange late;

    private BinnedLatencies(List<double> edges, List<int> lefts, List<double> counts, LateRange late)
    {
        this.edges = [.. edges];
        this.lefts = [.. lefts];
        this.counts = [.. counts];
        this.late = late;
        tails = new double[edges.Count];
    }

    public ReadOnlySpan<double> Counts => counts;

    /// <summary>Whether the step in which a session was recorded needs bins of its own.</summary>
    public static bool IsCoarse(SessionLatencies session) => session.ResolutionMs > ResolutionThatMattersMs;

    /// <summary>Bins the sessions.</summary>
    /// <param name="sessions">The sessions.</param>
    /// <param name="offsets">What to take off each session's latencies.</param>
    /// <param name="widthMs">The width of a bin, at least; a multiple of the recorded step where that is coarse.</param>
    /// <param name="late">Where late responses lie.</param>
    public static BinnedLatencies Of(IReadOnlyList<SessionLatencies> sessions, ReadOnlySpan<double> offsets, double widthMs, LateRange late)
    {
        List<double> edges = [];
        List<int> lefts = [];
        List<double> counts = [];
        List<long> shared = [];
        for (var j = 0; j < sessions.Count; j++)
        {
            var session = sessions[j];
            if (IsCoarse(session))
            {
                var (origin, width) = Lattice(session, widthMs);
                var cells = Array.ConvertAll(session.SortedMs, value => (long)Math.Floor((value - origin) / width));
                Append(cells, origin - offsets[j], width, edges, lefts, counts);
            }
            else
            {
                foreach (var value in session.SortedMs)
                {
                    shared.Add((long)Math.Floor((value - offsets[j]) / widthMs));
                }
            }
        }

        shared.Sort();
        Append(CollectionsMarshal.AsSpan(shared), 0, widthMs, edges, lefts, counts);
        return new BinnedLatencies(edges, lefts, counts, late);
    }

    /// <summary>Where the bins of a coarse session begin, and how wide they are.</summary>
    public static (double Origin, double Width) Lattice(SessionLatencies session, double widthMs)
    {
        var step = session.ResolutionMs;
        return (session.SortedMs[0] - (0.5 * step), step * Math.Max(1, Math.Round(widthMs / step)));
    }

    /// <inheritdoc/>
    public void Probabilities(LatencyShape shape, double lateShare, Span<double> probabilities)
    {
        var middle = shape.Mean;
        for (var i = 0; i < edges.Length; i++)
        {
            tails[i] = shape.SignedTail(edges[i]);
        }

        for (var i = 0; i < lefts.Length; i++)
        {
            var left = lefts[i];
            var inside = tails[left + 1] - tails[left] + (edges[left] <= middle && edges[left + 1] > middle ? 1 : 0);
            probabilities[i] = ((1 - lateShare) * inside) + (lateShare * late.Share(edges[left], edges[left + 1]));
        }
    }

    // Neighbours share an edge.
    private static void Append(ReadOnlySpan<long> ascending, double origin, double width, List<double> edges, List<int> lefts, List<double> counts)
    {
        for (var i = 0; i < ascending.Length; i++)
        {
            if (i > 0 && ascending[i] == ascending[i - 1])
            {
                counts[^1]++;
                continue;
            }

            if (i == 0 || ascending[i] != ascending[i - 1] + 1)
            {
                edges.Add(origin + (ascending[i] * width));
            }

            lefts.Add(edges.Count - 1);
            edges.Add(origin + ((ascending[i] + 1) * width));
            counts.Add(1);
        }
    }
}
