using Tarry.Metrology;

namespace Tarry.Statistics.Play;

/// <summary>By how much the best compensation of a sample flatters, because it was chosen on the trials that it is judged by.</summary>
/// <remarks>
/// mean* - v: the mean over resampled trials of the maximum, less the maximum of the sample (B. Efron, R. J. Tibshirani, An
/// Introduction to the Bootstrap, 1993, 10.3). Trials are drawn within their session, misses among them, so that sessions
/// keep their part. Accuracy: docs/methods/play.md.
/// </remarks>
public static class HitOptimism
{
    /// <summary>What to subtract from the maximum, 0 or more, for each pair of window and player.</summary>
    /// <param name="hits">The sample.</param>
    /// <param name="settings">Windows and players as in <see cref="HitProbability.Best"/>.</param>
    /// <param name="resamples">How many resamples, 1 or more.</param>
    /// <param name="random">What draws them.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static IReadOnlyList<double> Of(HitProbability hits, IReadOnlyList<(double Window, double PlayerSd)> settings, int resamples, SeededGenerator random)
    {
        ArgumentNullException.ThrowIfNull(hits);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(random);
        Argument.RequireAtLeast(resamples, 1, nameof(resamples), "Draw some hundred.");
        var timings = hits.Timings;
        var best = settings.Select(setting => Flattery(timings, hits, setting)).ToArray();
        var own = Array.ConvertAll(best, flattery => flattery(timings.Weights));
        var sums = new double[best.Length];
        var places = Places(timings, hits.Sessions.Count);
        var weights = new double[timings.Values.Length];
        for (var resample = 0; resample < resamples; resample++)
        {
            Draw(hits.Sessions, timings, places, weights, random);
            for (var i = 0; i < best.Length; i++)
            {
                sums[i] += best[i](weights);
            }
        }

        return [.. sums.Select((sum, i) => Math.Max(0, (sum / resamples) - own[i]))];
    }

    // The maximum less the share of the sample's own best compensation: the mean of that share over resamples is the sample's,
    // so that taking it away changes nothing but the noise.
    private static Func<double[], double> Flattery(WeightedTimings timings, HitProbability hits, (double Window, double PlayerSd) setting)
    {
        var kernel = HitProbability.Kernel(setting.Window, setting.PlayerSd);
        var compensation = hits.Best(setting.Window, setting.PlayerSd).Compensation;
        var maximum = Maximum(timings, hits.Sessions, setting);
        var fixedHits = Array.ConvertAll(timings.Values, value => kernel.At(value - compensation));
        return weights =>
        {
            var share = 0.0;
            for (var i = 0; i < weights.Length; i++)
            {
                share += weights[i] * fixedHits[i];
            }

            return maximum(weights) - share;
        };
    }

    private static Func<double[], double> Maximum(WeightedTimings timings, IReadOnlyList<TimingSession> sessions, (double Window, double PlayerSd) setting)
    {
        var kernel = HitProbability.Kernel(setting.Window, setting.PlayerSd);
        if (setting.PlayerSd == 0)
        {
            return weights => SharpWindow.BestShare(timings.Values, weights, setting.Window);
        }

        // A compensation worse than the best by ten standard errors is the best of no resample.
        var blurred = new BlurredWindow(timings.Values, kernel);
        var presses = sessions.Sum(session => session.Presses);
        return blurred.BestAmong(timings.Weights, blurred.Best(timings.Weights).Share - (5 / Math.Sqrt(presses)));
    }

    private static int[][] Places(WeightedTimings timings, int sessions)
    {
        var places = new List<int>[sessions];
        for (var session = 0; session < sessions; session++)
        {
            places[session] = [];
        }

        for (var i = 0; i < timings.SessionOf.Length; i++)
        {
            places[timings.SessionOf[i]].Add(i);
        }

        return Array.ConvertAll(places, list => list.ToArray());
    }

    private static void Draw(IReadOnlyList<TimingSession> sessions, WeightedTimings timings, int[][] places, double[] weights, SeededGenerator random)
    {
        Array.Clear(weights);
        for (var session = 0; session < sessions.Count; session++)
        {
            var mine = places[session];
            for (var press = 0; press < sessions[session].Presses; press++)
            {
                // What lies beyond the responses is a miss.
                var drawn = random.NextInt32(sessions[session].Presses);
                if (drawn < mine.Length)
                {
                    weights[mine[drawn]] += timings.WeightOf[session];
                }
            }
        }
    }
}
