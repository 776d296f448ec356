using Tarry.Findings.Conditions;
using Tarry.Findings.Quality;
using Tarry.Metrology;
using Tarry.Statistics.Play;

namespace Tarry.Findings.Play;

/// <summary>From the sessions of a study to what they mean for play.</summary>
internal static class PlayFindings
{
    private const int CurvePoints = 100;
    private const double CurveBeyondWidestWindow = 1.2;

    /// <summary>The findings; null where no condition has a response.</summary>
    /// <param name="settings">What is assumed of the game and the player.</param>
    /// <param name="conditions">The conditions with their sessions, in order.</param>
    /// <param name="seed">The seed of the resampling.</param>
    public static StudyPlay? Of(PlaySettings settings, IReadOnlyList<(string Id, SessionDiagnosis[] Diagnoses)> conditions, ulong seed)
    {
        var pairs = settings.PlayerSdsMs.SelectMany(player => settings.WindowsMs.Select(window => (PlayerSd: player, Window: window))).ToList();
        var present = conditions
            .Where(condition => condition.Diagnoses.Any(diagnosis => diagnosis.Session.Latencies.Count > 0))
            .Select(condition => new PlayCondition(condition.Id, condition.Diagnoses, pairs, SeededGenerator.ForPart(seed, PartOf(condition.Id))))
            .ToList();
        if (present.Count == 0)
        {
            return null;
        }

        var dispersions = HitEstimate.Dispersions(present, pairs.Count);
        var compared = pairs.Select((pair, index) => PlayComparisons.Of(present, dispersions[index], index, pair.PlayerSd, pair.Window)).ToList();
        var logs = DeviceErrorEstimate.Logs(present);
        return new StudyPlay(
            settings,
            [.. present.Select((condition, place) => Finding(condition, settings, pairs, [.. dispersions.Select(dispersion => dispersion[place])], logs))],
            [.. compared.Select(setting => setting.Ranking)],
            [.. compared.SelectMany(setting => setting.Comparisons)]);
    }

    private static PlayFinding Finding(
        PlayCondition condition, PlaySettings settings, List<(double PlayerSd, double Window)> pairs, HitDispersion[] dispersions, SessionScatter logs)
    {
        var step = settings.WindowsMs[^1] * CurveBeyondWidestWindow / CurvePoints;
        return new PlayFinding
        {
            Id = condition.Id,
            Learned = Latency.FromMilliseconds(condition.Hits.Median),
            DeviceError = DeviceErrorEstimate.Of(condition, logs),
            ErrorsWithPlayerMs =
            [
                .. settings.PlayerSdsMs.Select(player => condition.Sessions
                    .Where(session => session.Latencies.Count > 0)
                    .Average(session => TimingError.MeanAbsolute(session.Latencies.Sorted, condition.Hits.Median, player))),
            ],
            Windows = [.. pairs.Select((pair, index) => Window(condition, condition.Windows[index], dispersions[index], pair.PlayerSd, pair.Window))],
            Curves =
            [
                .. settings.PlayerSdsMs.Select(player => new PlayCurve(
                    player,
                    step,
                    condition.Hits.Curve(Enumerable.Range(1, CurvePoints).Select(point => point * step), player))),
            ],
        };
    }

    private static PlayWindow Window(PlayCondition condition, HitEvidence evidence, HitDispersion dispersion, double playerSd, double window) => new()
    {
        PlayerSdMs = playerSd,
        WindowMs = window,
        HitProbability = HitEstimate.Of(condition, evidence, dispersion),
        Compensation = Latency.FromMilliseconds(evidence.Best.Compensation),
        GoodCompensations =
        [
            .. condition.Hits
                .CompensationsAtLeast(evidence.Best.Share - HitEstimate.StandardError(condition, evidence, dispersion), window, playerSd)
                .Select(limits => new Interval<Latency>(Latency.FromMilliseconds(limits.Low), Latency.FromMilliseconds(limits.High))),
        ],
    };

    // By name, so that a condition keeps its resamples when another is added (G. Fowler, L. C. Noll, K.-P. Vo: FNV-1a).
    private static ulong PartOf(string id) => id.Aggregate(14695981039346656037UL, (hash, character) => unchecked((hash ^ character) * 1099511628211UL));
}
