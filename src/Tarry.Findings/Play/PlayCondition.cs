using Tarry.Findings.Quality;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Play;

namespace Tarry.Findings.Play;

/// <summary>One condition made ready for play: its sessions, and what every player and window makes of them.</summary>
internal sealed class PlayCondition
{
    private const int Resamples = 100;

    public PlayCondition(string id, IReadOnlyList<SessionDiagnosis> diagnoses, IReadOnlyList<(double PlayerSd, double Window)> settings, SeededGenerator random)
    {
        Id = id;
        InPool = diagnoses.All(diagnosis => diagnosis.InPool);
        Sessions = [.. diagnoses.Select(diagnosis => diagnosis.Session).Where(session => session.Latencies.Count + session.Latencies.Missed > 0)];
        Hits = new HitProbability([.. Sessions.Select(session => new TimingSession(session.Latencies.Sorted, session.Latencies.Missed))]);
        var optimism = HitOptimism.Of(Hits, [.. settings.Select(setting => (setting.Window, setting.PlayerSd))], Resamples, random);
        Windows = [.. settings.Select((setting, index) => Evidence(setting.PlayerSd, setting.Window, optimism[index]))];
    }

    public string Id { get; }

    /// <summary>Whether all of its sessions may lend to the others what they scatter.</summary>
    public bool InPool { get; }

    /// <summary>Its sessions that have presses.</summary>
    public IReadOnlyList<SessionSample> Sessions { get; }

    public HitProbability Hits { get; }

    /// <summary>What every setting makes of it, in the order of the settings.</summary>
    public IReadOnlyList<HitEvidence> Windows { get; }

    /// <summary>Presses that count, misses among them.</summary>
    public int Presses => Sessions.Sum(session => session.Latencies.Count + session.Latencies.Missed);

    private HitEvidence Evidence(double playerSd, double window, double optimism)
    {
        var best = Hits.Best(window, playerSd);
        var sessions = Hits.At(best.Compensation, window, playerSd);
        return new HitEvidence(
            best,
            optimism,
            Sessions.Select((session, index) => (session.Key.Sitting, sessions[index])).ToDictionary(entry => entry.Sitting, entry => entry.Item2));
    }
}
