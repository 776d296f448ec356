using Tarry.Findings.Budgets;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Findings.DeviceOnly;
using Tarry.Findings.Exclusions;
using Tarry.Findings.Factors;
using Tarry.Findings.Play;
using Tarry.Findings.Quality;
using Tarry.Findings.ReportIntervals;
using Tarry.Findings.ReportStreams;
using Tarry.Findings.Samples;
using Tarry.Findings.Shapes;
using Tarry.Findings.Sticks;
using Tarry.Metrology;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Intervals;
using Tarry.Studies;
using Tarry.Studies.Calibrations;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings;

/// <summary>From the sessions of a study to all that it says.</summary>
public static class StudyAnalysis
{
    /// <summary>Analyses a study.</summary>
    /// <param name="study">The study, opened.</param>
    /// <param name="seed">The seed of whatever is resampled.</param>
    /// <param name="version">The version of the program, for the document.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    /// <exception cref="StudyException">A session cannot be read.</exception>
    public static FindingsDocument Run(Study study, ulong seed, string version, CancellationToken cancellation = default) =>
        Run(study, seed, version, play: null, cancellation);

    /// <summary>Analyses a study for stated windows and players.</summary>
    /// <param name="study">The study, opened.</param>
    /// <param name="seed">The seed of whatever is resampled.</param>
    /// <param name="version">The version of the program, for the document.</param>
    /// <param name="play">What is assumed of the game and the player; what it leaves open is as the study file states it.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    /// <exception cref="StudyException">A session cannot be read.</exception>
    public static FindingsDocument Run(Study study, ulong seed, string version, PlayEntry? play, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(study);
        return Run(study, WithPlay(study.File, play), seed, version, cancellation);
    }

    /// <summary>Analyses a study as if further trials were set aside; nothing is written.</summary>
    /// <param name="study">The study, opened.</param>
    /// <param name="further">What is set aside beside what the study file sets aside.</param>
    /// <param name="seed">The seed of whatever is resampled.</param>
    /// <param name="version">The version of the program, for the document.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    /// <exception cref="StudyException">A session cannot be read.</exception>
    public static FindingsDocument Run(Study study, IReadOnlyList<Exclusion> further, ulong seed, string version, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(further);
        return Run(study, study.File with { Exclusions = [.. study.File.Exclusions, .. further] }, seed, version, cancellation);
    }

    /// <summary>What the latencies mean for other windows and players than a document was made for: the same as a whole analysis for these would say of play.</summary>
    /// <param name="study">The study, opened.</param>
    /// <param name="document">The findings of the study as it is; its cautions say which sessions may be pooled, and its seed is used.</param>
    /// <param name="play">What is assumed of the game and the player; what it leaves open is as the study file states it.</param>
    /// <param name="cancellation">Stops between sessions.</param>
    /// <returns>Null where no condition has a response.</returns>
    /// <exception cref="StudyException">A session cannot be read.</exception>
    public static StudyPlay? Play(Study study, FindingsDocument document, PlayEntry play, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(play);
        var file = WithPlay(study.File, play);
        var samples = Samples(study, file, cancellation).GroupBy(sample => sample.Key.Condition).ToDictionary(group => group.Key, group => group.ToList());
        var conditions = document.Conditions
            .Where(condition => samples.TryGetValue(condition.Id, out var sessions) && !sessions.Any(session => session.IntervalCensored))
            .Select(condition => (condition.Id, samples[condition.Id].Select(session => Diagnosed(session, condition)).ToArray()));
        return PlayFindings.Of(PlaySettings.Of(file.Play), [.. conditions], document.Seed);
    }

    private static SessionDiagnosis Diagnosed(SessionSample session, ConditionFinding condition) =>
        new(session, [.. condition.Cautions.Where(caution => caution.Subject == session.Key.ToString())]);

    private static StudyFile WithPlay(StudyFile file, PlayEntry? play) =>
        file with { Play = new PlayEntry(play?.WindowsMs ?? file.Play?.WindowsMs, play?.PlayerSdsMs ?? file.Play?.PlayerSdsMs) };

    private static List<SessionSample> Samples(Study study, StudyFile file, CancellationToken cancellation)
    {
        var samples = new List<SessionSample>();
        foreach (var key in study.SessionKeys)
        {
            cancellation.ThrowIfCancellationRequested();
            samples.Add(SessionSampler.Prepare(study.Read(key), file.Exclusions));
        }

        return samples;
    }

    private static FindingsDocument Run(Study study, StudyFile file, ulong seed, string version, CancellationToken cancellation)
    {
        var samples = Samples(study, file, cancellation);
        var calibrations = study.Calibrations.ToDictionary(entry => entry.Name, entry => entry.Calibration);
        return Of(file, samples, study.Imports.Sum(import => import.RefusedUnassigned), seed, version, calibrations, PlaySettings.Of(file.Play)) with
        {
            ReportStreams = ReportStreamFindings.Of(study, cancellation),
            Sticks = SticksOf(study, cancellation),
            SetAside = RecordingSetAside.Of(study),
        };
    }

    // A session that the study file excludes as a whole is left out.
    private static StudySticks? SticksOf(Study study, CancellationToken cancellation)
    {
        var sessions = new List<StickSession>();
        foreach (var key in study.StickKeys.Where(key => !study.File.Exclusions.Any(exclusion => exclusion.Session == key && exclusion is { FirstSequence: null, LastSequence: null })))
        {
            cancellation.ThrowIfCancellationRequested();
            sessions.Add(study.ReadStick(key));
        }

        return StickFindings.Of(study.File.Conditions, sessions);
    }

    internal static FindingsDocument Of(StudyFile file, IReadOnlyList<SessionSample> samples, long refusedWithoutSession, ulong seed, string version, IReadOnlyDictionary<string, RigCalibration>? calibrations = null, PlaySettings? play = null, bool withShapes = true, bool withDeviceOnly = true)
    {
        var conditions = WithUndeclared(file.Conditions, samples);
        var rates = conditions.ToDictionary(condition => condition.Id, condition => condition.NominalReportHz);
        var grids = new StudySlotGrids(conditions, file.Reference, samples);
        var diagnoses = grids.WithBeats(SessionDiagnoses.Of(samples, id => grids.ReportHz(id) ?? rates[id]), rates)
            .GroupBy(diagnosis => diagnosis.Session.Key.Condition)
            .ToDictionary(group => group.Key, group => group.ToArray());
        var present = conditions.Where(condition => diagnoses.ContainsKey(condition.Id)).ToList();
        var findings = new ConditionFindings(diagnoses);

        // Where latencies are known as intervals only, what rests on their exact places says nothing.
        var exact = diagnoses.Where(entry => !entry.Value.Any(diagnosis => diagnosis.Session.IntervalCensored)).Select(entry => entry.Key).ToHashSet(StringComparer.Ordinal);

        var sessionMeans = present.Select(condition => MeansOf(condition, diagnoses[condition.Id]))
            .Where(means => means.Sittings.Count > 0)
            .ToList();
        var pairs = sessionMeans
            .SelectMany((a, index) => sessionMeans.Skip(index + 1).Select(b => new ConditionPair(a, b)))
            .ToList();
        var variances = new PairVariances(sessionMeans, pairs);
        var evidence = PairFindings.Evidence(variances, pairs, findings.Means);
        var budgets = new ConditionBudgets(samples, calibrations ?? new Dictionary<string, RigCalibration>(), findings.Means);
        var grounds = new VerdictGrounds(diagnoses);
        var comparisons = PairFindings.Findings(evidence, file.MarginMs)
            .Zip(evidence, (comparison, of) => grounds.Checked(comparison, of) with { Budget = DifferenceBudget.Of(of, budgets.Chains) })
            .ToList();

        var shapes = !withShapes ? null : new ConditionShapes(file.Reference, file.Reference is null ? null : rates.GetValueOrDefault(file.Reference), diagnoses, findings.Means);
        var found = present
            .Select(condition => findings.Of(condition, condition.Id == file.Reference, Relative(condition.Id, file.Reference, comparisons)))
            .Select(condition => condition with { Budget = budgets.Of(condition), ReportInterval = grids.Finding(condition.Id, diagnoses[condition.Id]) })
            .Select(condition => exact.Contains(condition.Id) ? shapes?.With(condition) ?? condition : condition)
            .Select(ShapeJoin.Joined)
            .Select(findings.WithKnownWaits)
            .ToList();
        found = withDeviceOnly ? DeviceOnlyFindings.Attach(found, diagnoses, seed) : found;
        return new FindingsDocument
        {
            Title = file.Title,
            Reference = file.Reference,
            MarginMs = file.MarginMs,
            Seed = seed,
            Version = version,
            Counts = found.Aggregate(new SessionCounts(0, 0, 0, refusedWithoutSession, 0), (sum, condition) => sum + condition.Counts),
            Conditions = found,
            Comparisons = comparisons,
            Ranking = sessionMeans.Count == 0 ? [] : RankingByMean.Of(sessionMeans, [.. evidence.Select(pair => grounds.Undoing(pair).Count > 0 ? pair with { Difference = null } : pair)]),
            Factors = FactorFindings.Of([.. present.Where(condition => exact.Contains(condition.Id))], file.Reference, evidence, comparisons, grounds),
            Play = play is null ? null : PlayFindings.Of(play, [.. present.Where(condition => exact.Contains(condition.Id)).Select(condition => (condition.Id, diagnoses[condition.Id]))], seed),
            Cautions = [.. UnitCautions.Of(found), .. RigCautions.Of(samples, budgets.Chains), .. variances.Caution is { } caution ? [caution] : Array.Empty<Caution>()],
        };
    }

    private static List<ConditionEntry> WithUndeclared(IReadOnlyList<ConditionEntry> declared, IReadOnlyList<SessionSample> samples)
    {
        var undeclared = samples.Select(sample => sample.Key.Condition)
            .Distinct()
            .Except(declared.Select(condition => condition.Id))
            .Order(StringComparer.Ordinal)
            .Select(id => new ConditionEntry { Id = id, Factors = new Dictionary<string, string>() });
        return [.. declared, .. undeclared];
    }

    private static SessionMeans MeansOf(ConditionEntry condition, SessionDiagnosis[] diagnoses) => new(
        condition.Id,
        condition.Factors.GetValueOrDefault("link", ""),
        diagnoses.Where(diagnosis => diagnosis.Session.Latencies.Count > 0).ToDictionary(
            diagnosis => diagnosis.Session.Key.Sitting,
            diagnosis =>
            {
                var latencies = diagnosis.Session.Latencies.InOrder;
                return new SessionMean(
                    Moments.Mean(latencies),
                    VarianceOfMean(latencies),
                    latencies.Length,
                    diagnosis.InPool,
                    diagnosis.Session.HalfWidthMs);
            }));

    // From batch means, so that dependence between trials is in it.
    private static double? VarianceOfMean(ReadOnlySpan<double> latencies)
    {
        if (latencies.Length < BatchMeansInterval.SmallestCount)
        {
            return null;
        }

        var error = BatchMeansInterval.StandardError(latencies);
        return error * error;
    }

    private static EstimateOutcome<LatencyDifference> Relative(string id, string? reference, IReadOnlyList<ComparisonFinding> comparisons)
    {
        foreach (var comparison in comparisons)
        {
            if (comparison.A == id && comparison.B == reference)
            {
                return comparison.Difference;
            }

            if (comparison.B == id && comparison.A == reference)
            {
                return comparison.Swapped().Difference;
            }
        }

        return new NotEnough<LatencyDifference>(0, 1, "sessions of a reference condition");
    }
}
