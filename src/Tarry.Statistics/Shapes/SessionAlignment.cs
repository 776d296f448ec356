using Tarry.Statistics.Quantiles;

namespace Tarry.Statistics.Shapes;

/// <summary>Brings sessions to a common place, so that what shifts between them neither blurs nor widens their common shape.</summary>
/// <remarks>
/// Maximum likelihood of one place a session and one shape for all, by turns: the places given the shape by scoring, then the
/// shape given the places. The first places are means of the middle 80 % of each session. Places are relative: their mean,
/// weighted by trials, is zero.
/// </remarks>
internal sealed class SessionAlignment
{
    private const int Steps = 12;
    private const double Nudge = 1e-4;
    private const double SmallestProbability = 1e-15;

    private readonly IReadOnlyList<SessionLatencies> sessions;
    private readonly BinnedLatencies[] bins;
    private readonly LateRange[] late;

    /// <summary>An alignment of sessions.</summary>
    /// <param name="sessions">The sessions.</param>
    /// <param name="widthMs">The width of bins.</param>
    public SessionAlignment(IReadOnlyList<SessionLatencies> sessions, double widthMs)
    {
        this.sessions = sessions;
        late = [.. sessions.Select(session => LateRange.Of(SampleQuantile.Of(session.SortedMs, 0.5)!.Value, session.SortedMs[^1]))];
        bins = [.. sessions.Select((session, j) => BinnedLatencies.Of([session], [0.0], widthMs, late[j]))];
    }

    /// <summary>First places: differences of trimmed means.</summary>
    public static double[] Rough(IReadOnlyList<SessionLatencies> sessions) => Centred(sessions, [.. sessions.Select(session => MiddleMean(session.SortedMs))]);

    /// <summary>The places of greatest likelihood given a shape.</summary>
    /// <param name="shape">The common shape.</param>
    /// <param name="lateShare">The common late share.</param>
    /// <param name="from">Places to start from.</param>
    public double[] Given(LatencyShape shape, double lateShare, double[] from) =>
        sessions.Count == 1 ? [0] : Centred(sessions, [.. from.Select((place, j) => Place(bins[j], shape, lateShare, place))]);

    private static double Place(BinnedLatencies session, LatencyShape shape, double lateShare, double place)
    {
        var here = new double[session.Counts.Length];
        var beside = new double[here.Length];
        var value = Value(session, shape, lateShare, place, here);
        var damping = 1e-3;
        for (var step = 0; step < Steps; step++)
        {
            session.Probabilities(new ShiftedShape(shape, place + Nudge), lateShare, beside);
            double gradient = 0, information = 1e-9;
            for (var i = 0; i < here.Length; i++)
            {
                var p = Math.Max(SmallestProbability, here[i]);
                var slope = (Math.Max(SmallestProbability, beside[i]) - p) / (Nudge * p);
                gradient += session.Counts[i] * slope;
                information += session.Counts[i] * slope * slope;
            }

            var move = gradient / (information * (1 + damping));
            var next = Value(session, shape, lateShare, place + move, beside);
            if (next > value)
            {
                var gain = next - value;
                (value, place, damping) = (next, place + move, damping / 8);
                (here, beside) = (beside, here);
                if (gain < 1e-6)
                {
                    break;
                }
            }
            else
            {
                damping *= 10;
            }
        }

        return place;
    }

    private static double Value(BinnedLatencies session, LatencyShape shape, double lateShare, double place, double[] probabilities)
    {
        session.Probabilities(new ShiftedShape(shape, place), lateShare, probabilities);
        double sum = 0;
        for (var i = 0; i < probabilities.Length; i++)
        {
            sum += session.Counts[i] * Math.Log(Math.Max(SmallestProbability, probabilities[i]));
        }

        return sum;
    }

    private static double[] Centred(IReadOnlyList<SessionLatencies> sessions, double[] places)
    {
        double sum = 0, trials = 0;
        for (var j = 0; j < places.Length; j++)
        {
            sum += places[j] * sessions[j].SortedMs.Length;
            trials += sessions[j].SortedMs.Length;
        }

        return Array.ConvertAll(places, place => place - (sum / trials));
    }

    private static double MiddleMean(double[] sorted)
    {
        var cut = sorted.Length / 10;
        double sum = 0;
        for (var i = cut; i < sorted.Length - cut; i++)
        {
            sum += sorted[i];
        }

        return sum / (sorted.Length - (2 * cut));
    }
}
