namespace Tarry.Statistics.Play;

/// <summary>
/// How often a press hits a timing window when the player compensates by the best constant: the maximum over c of
/// P(|L - c + N(0, s)| &lt;= w). A constant delay can be learned, an erratic one cannot.
/// </summary>
/// <remarks>
/// s = 0: two pointers over the sorted latencies, exact; the window is closed. s &gt; 0: a grid in steps of s/8 over narrow
/// bins, then Newton's method on the latencies themselves. Sessions weigh alike; a press without a response does not hit.
/// The maximum of a sample flatters: see <see cref="HitOptimism"/>. n log n for the sorting, then linear in n.
/// </remarks>
public sealed class HitProbability
{
    /// <summary>Shorter than any player's; a smaller one would need a finer grid than play can use.</summary>
    public const double SmallestPlayerSd = 0.1;

    private const int Refinements = 40;

    private readonly IReadOnlyList<TimingSession> sessions;
    private readonly WeightedTimings timings;

    /// <summary>Over sessions of one condition.</summary>
    /// <param name="sessions">At least one, with at least one response among them.</param>
    /// <exception cref="ArgumentException">There is no response.</exception>
    public HitProbability(IReadOnlyList<TimingSession> sessions)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        this.sessions = sessions;
        timings = new WeightedTimings(sessions);
        Argument.RequireCount(timings.Values, 1, nameof(sessions));
    }

    internal WeightedTimings Timings => timings;

    internal IReadOnlyList<TimingSession> Sessions => sessions;

    /// <summary>The best constant for the mean absolute error: the median of the responses, sessions weighing alike.</summary>
    public double Median => timings.Median();

    /// <summary>The best compensation for a window.</summary>
    /// <param name="window">To either side of the right moment, in ms, 0 or more; inside it when exactly at its edge.</param>
    /// <param name="playerSd">The player's own standard deviation, in ms: 0, or <see cref="SmallestPlayerSd"/> or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public HitOptimum Best(double window, double playerSd)
    {
        var kernel = Kernel(window, playerSd);
        if (playerSd == 0)
        {
            return SharpWindow.Best(timings.Values, timings.Weights, window);
        }

        var rough = new BlurredWindow(timings.Values, kernel).Best(timings.Weights).Compensation;
        return Polished(kernel, rough, playerSd / 8);
    }

    /// <summary>Every compensation that hits at least so often, as closed intervals, ascending.</summary>
    /// <inheritdoc cref="Best"/>
    public IReadOnlyList<ConfidenceLimits> CompensationsAtLeast(double share, double window, double playerSd)
    {
        var kernel = Kernel(window, playerSd);
        return playerSd == 0
            ? SharpWindow.AtLeast(timings.Values, timings.Weights, window, share)
            : new BlurredWindow(timings.Values, kernel).AtLeast(timings.Weights, share);
    }

    /// <summary>The share of the best compensation for each of several windows, for a curve.</summary>
    /// <inheritdoc cref="Best"/>
    public IReadOnlyList<double> Curve(IEnumerable<double> windows, double playerSd)
    {
        ArgumentNullException.ThrowIfNull(windows);
        return [.. windows.Select(window =>
        {
            var kernel = Kernel(window, playerSd);
            return playerSd == 0
                ? SharpWindow.BestShare(timings.Values, timings.Weights, window)
                : Math.Clamp(new BlurredWindow(timings.Values, kernel).Best(timings.Weights).Share, 0, 1);
        })];
    }

    /// <summary>How often each session hits with one compensation.</summary>
    /// <inheritdoc cref="Best"/>
    public IReadOnlyList<SessionHits> At(double compensation, double window, double playerSd)
    {
        var kernel = Kernel(window, playerSd);
        return [.. sessions.Select(session => Hits(session, kernel, compensation))];
    }

    internal static HitKernel Kernel(double window, double playerSd)
    {
        Argument.RequireNotNegative(window, nameof(window));
        Argument.RequireNotNegative(playerSd, nameof(playerSd));
        return playerSd is 0 or >= SmallestPlayerSd
            ? new HitKernel(window, playerSd)
            : throw new ArgumentOutOfRangeException(nameof(playerSd), playerSd, $"playerSd is {playerSd}; give 0 for a player who never errs, or {SmallestPlayerSd} ms or more.");
    }

    private static SessionHits Hits(TimingSession session, HitKernel kernel, double compensation)
    {
        var (sum, squares) = (0.0, 0.0);
        foreach (var latency in session.Sorted)
        {
            var hit = kernel.At(latency - compensation);
            sum += hit;
            squares += hit * hit;
        }

        var share = sum / session.Presses;
        return new SessionHits(share, Math.Max(0, (squares / session.Presses) - (share * share)) / session.Presses, session.Presses);
    }

    // Newton's method on the slope, kept inside the bracket by halving it.
    private HitOptimum Polished(HitKernel kernel, double rough, double step)
    {
        var (low, high, best) = (rough - step, rough + step, rough);
        for (var i = 0; i < Refinements; i++)
        {
            var (slope, curvature) = Change(kernel, best);
            if (slope == 0)
            {
                break;
            }

            (low, high) = slope > 0 ? (best, high) : (low, best);
            var next = best - (slope / curvature);
            next = curvature < 0 && next > low && next < high ? next : 0.5 * (low + high);
            var moved = Math.Abs(next - best);
            best = next;
            if (moved <= HitKernel.Rounding)
            {
                break;
            }
        }

        return new HitOptimum(best, Math.Clamp(Share(kernel, best), 0, 1));
    }

    private (double Slope, double Curvature) Change(HitKernel kernel, double compensation)
    {
        var (slope, curvature) = (0.0, 0.0);
        for (var i = 0; i < timings.Values.Length; i++)
        {
            var at = kernel.ByCompensation(timings.Values[i] - compensation);
            slope += timings.Weights[i] * at.Slope;
            curvature += timings.Weights[i] * at.Curvature;
        }

        return (slope, curvature);
    }

    private double Share(HitKernel kernel, double compensation)
    {
        var sum = 0.0;
        for (var i = 0; i < timings.Values.Length; i++)
        {
            sum += timings.Weights[i] * kernel.At(timings.Values[i] - compensation);
        }

        return sum;
    }
}
