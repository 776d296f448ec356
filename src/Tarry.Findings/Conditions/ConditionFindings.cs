using Tarry.Findings.Quality;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Conditions;

/// <summary>The findings of every condition, with the scatter between sessions pooled over all of them.</summary>
internal sealed class ConditionFindings
{
    private readonly IReadOnlyDictionary<string, SessionDiagnosis[]> diagnoses;
    private readonly SessionScatter logDeviations;
    private readonly SessionScatter logSpreads;

    public ConditionFindings(IReadOnlyDictionary<string, SessionDiagnosis[]> diagnoses)
    {
        this.diagnoses = diagnoses;
        Means = Scatter(session => session.Latencies.Count > 0 ? Moments.Mean(session.Latencies.InOrder) : null);
        logDeviations = Scatter(ScaleEstimate.LogStandardDeviation);
        logSpreads = Scatter(ScaleEstimate.LogSpread);
    }

    /// <summary>The scatter of session means.</summary>
    public SessionScatter Means { get; }

    public ConditionFinding Of(ConditionEntry condition, bool isReference, EstimateOutcome<LatencyDifference>? relative)
    {
        var mine = diagnoses[condition.Id];
        var sessions = mine.Select(diagnosis => diagnosis.Session).ToList();
        var pool = new PooledSample(sessions);
        var mean = MeanEstimate.Of(pool, Means);
        var median = QuantileEstimate.Of(pool, 0.5, Means);
        var late = ShareEstimate.Definition(median);
        var finding = new ConditionFinding
        {
            Id = condition.Id,
            Factors = condition.Factors,
            NominalReportHz = condition.NominalReportHz,
            IsReference = isReference,
            Chain = ChainFinding.Of(sessions.Select(session => session.Record)),
            Sessions = [.. mine.Select(diagnosis => Session(diagnosis, late))],
            Counts = sessions.Aggregate(default(Studies.Sessions.SessionCounts), (sum, session) => sum + session.Counts),
            Mean = mean,
            MeanScatter = Means.ModerationOf(condition.Id),
            MeanWithBetweenSessions = MeanEstimate.WithBetweenSessions(mean, Means, pool.Sessions),
            Median = median,
            P05 = QuantileEstimate.Of(pool, 0.05, Means),
            P25 = QuantileEstimate.Of(pool, 0.25, Means),
            P75 = QuantileEstimate.Of(pool, 0.75, Means),
            P95 = QuantileEstimate.Of(pool, 0.95, Means),
            P99 = QuantileEstimate.Of(pool, 0.99, Means),
            StandardDeviation = ScaleEstimate.StandardDeviation(pool, logDeviations),
            Spread = ScaleEstimate.Spread(pool, logSpreads),
            LateBeyond = late,
            LateShare = ShareEstimate.Late(pool, late),
            MissedShare = ShareEstimate.Missed(sessions),
            Relative = isReference ? null : relative,
            Density = ConditionDensity.Of(pool),
            Distribution = ConditionDistribution.Of(pool),
            Cautions = [],
        };
        finding = CensoredFindings.Of(finding, sessions, Means);
        return finding with { Cautions = [.. ConditionCautions.Of(finding), .. mine.SelectMany(diagnosis => diagnosis.Cautions)] };
    }

    /// <summary>The condition with its late share counted from the end of the known waits, where they are known.</summary>
    public ConditionFinding WithKnownWaits(ConditionFinding condition)
    {
        if (KnownWaits.Of(condition) is not { } waits)
        {
            return condition;
        }

        var pool = new PooledSample([.. diagnoses[condition.Id].Select(diagnosis => diagnosis.Session)]);
        var late = ShareEstimate.Definition(condition.Median, waits);
        return condition with { LateBeyond = late, LateShare = ShareEstimate.Late(pool, late) };
    }

    private static SessionFinding Session(SessionDiagnosis diagnosis, LateDefinition? late)
    {
        var session = diagnosis.Session;
        return new SessionFinding(
            session.Key,
            session.Counts,
            MeanEstimate.WithinOneSession(session),
            session.Latencies.Count >= 2
                ? LatencyDifference.FromMilliseconds(Moments.StandardDeviation(session.Latencies.InOrder))
                : null,
            diagnosis.InPool,
            session.ExclusionReasons)
        {
            RunChart = SessionRunChart.Of(session, late),
        };
    }

    private SessionScatter Scatter(Func<SessionSample, double?> statistic) => new(diagnoses.ToDictionary(
        entry => entry.Key,
        entry => (
            (IReadOnlyDictionary<string, double>)BySitting(entry.Value, statistic),
            entry.Value.All(diagnosis => diagnosis.InPool || diagnosis.Session.Latencies.Count == 0))));

    private static SortedDictionary<string, double> BySitting(SessionDiagnosis[] sessions, Func<SessionSample, double?> statistic)
    {
        var values = new SortedDictionary<string, double>(StringComparer.Ordinal);
        foreach (var diagnosis in sessions)
        {
            if (statistic(diagnosis.Session) is { } value)
            {
                values.Add(diagnosis.Session.Key.Sitting, value);
            }
        }

        return values;
    }
}
