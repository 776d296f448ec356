using Tarry.Findings.DeviceOnly;
using Tarry.Findings.Quality;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.ReportIntervals;

/// <summary>The slot grids of all conditions of a study, with the chain as the reference shows it.</summary>
internal sealed class StudySlotGrids
{
    private const double NearAssumedMs = 0.001;

    private readonly Dictionary<string, ConditionPresses> presses;
    private readonly Dictionary<string, ReportIntervalOutcome> outcomes = [];
    private readonly ChainGrids? chain;
    private readonly string? reference;

    public StudySlotGrids(IReadOnlyList<ConditionEntry> conditions, string? reference, IReadOnlyList<SessionSample> samples)
    {
        this.reference = reference;
        presses = samples
            .GroupBy(sample => sample.Key.Condition, StringComparer.Ordinal)
            .ToDictionary(condition => condition.Key, condition => new ConditionPresses([.. condition]), StringComparer.Ordinal);
        var nominal = conditions.ToDictionary(condition => condition.Id, condition => 1000 / condition.NominalReportHz, StringComparer.Ordinal);
        if (reference is not null && presses.TryGetValue(reference, out var own) && own.Refused is null)
        {
            (chain, outcomes[reference]) = OfReference(own.Series, nominal.GetValueOrDefault(reference));
            chain = chain.WithOwn(outcomes[reference]);
        }
        else
        {
            chain = ChainGrids.Shared([.. presses.Values.Where(condition => condition.Refused is null).Select(condition => condition.Series)]);
        }

        // Each condition stands alone, so the order in which they are done does not show.
        var rest = presses.Keys.Where(id => !outcomes.ContainsKey(id)).Order(StringComparer.Ordinal).ToArray();
        var found = new ReportIntervalOutcome[rest.Length];
        Parallel.For(0, rest.Length, i => found[i] = presses[rest[i]].Refused ?? ReportIntervalSearch.Of(presses[rest[i]].Series, chain, nominal.GetValueOrDefault(rest[i])));
        for (var i = 0; i < rest.Length; i++)
        {
            outcomes[rest[i]] = found[i];
        }
    }

    // Where no rate is stated of the reference, a grid of 1 ms that it shows is taken for its own: full-speed USB, which a rig in
    // reference mode speaks, polls in frames of 1 ms (USB 2.0, 5.3.3). Any other grid may be the chain's.
    private static (ChainGrids Chain, ReportIntervalOutcome Outcome) OfReference(IReadOnlyList<PressSeries> series, double? statedMs)
    {
        var chain = ChainGrids.Of(series, statedMs);
        var outcome = ReportIntervalSearch.Of(series, chain, statedMs);
        var seenMs = outcome switch
        {
            ReportIntervalFound found => found.IntervalMs,
            ReportIntervalRefused { Reason: ReportIntervalReason.NotAttributed, ChoicesMs: [var choice] } => choice,
            _ => double.NaN,
        };
        return statedMs is null && Math.Abs(seenMs - ReferenceSlot.AssumedMs) < NearAssumedMs
            ? OfReference(series, ReferenceSlot.AssumedMs)
            : (chain, outcome);
    }

    /// <summary>What was found of a condition that has sessions.</summary>
    public ReportIntervalOutcome Outcome(string condition) => outcomes[condition];

    /// <summary>The report rate found; null where none is claimed.</summary>
    public double? ReportHz(string condition) =>
        outcomes.GetValueOrDefault(condition) is ReportIntervalFound found ? 1000 / found.IntervalMs : null;

    /// <summary>Adds the caution of a beat that a session sees too little of.</summary>
    /// <param name="diagnoses">What the sessions show otherwise.</param>
    /// <param name="nominalReportHz">The rates that makers state, used where none is found.</param>
    public IEnumerable<SessionDiagnosis> WithBeats(IEnumerable<SessionDiagnosis> diagnoses, IReadOnlyDictionary<string, double?> nominalReportHz) =>
        diagnoses.Select(diagnosis =>
        {
            var session = diagnosis.Session;
            var rate = ReportHz(session.Key.Condition) ?? nominalReportHz[session.Key.Condition];
            return rate is { } hz
                && outcomes[session.Key.Condition].FrameIntervalMs is { } frame
                && session.Timed.Count > 0
                && BeatCaution.Of(session.Key.ToString(), 1000 / hz, frame, session.Timed.Sum(Seconds)) is { } caution
                    ? new SessionDiagnosis(session, [.. diagnosis.Cautions, caution])
                    : diagnosis;
        });

    private static double Seconds(TimedLatencies timed) => (timed.PressesMs[^1] - timed.PressesMs[0]) / 1000;

    /// <summary>The finding of a condition.</summary>
    /// <param name="condition">The condition.</param>
    /// <param name="diagnoses">What its sessions show: presses that keep step with a period undo what is found of one.</param>
    public ReportIntervalFinding Finding(string condition, IReadOnlyList<SessionDiagnosis> diagnoses)
    {
        var mine = presses[condition];
        var outcome = outcomes[condition] is ReportIntervalFound seen && diagnoses.SelectMany(diagnosis => diagnosis.Cautions).Any(caution => caution.Kind == CautionKind.PhaseLocked)
            ? new ReportIntervalRefused(seen.Trials, seen.FrameIntervalMs, ReportIntervalReason.PhaseLocked, null, [seen.IntervalMs])
            : outcomes[condition];
        var finding = new ReportIntervalFinding
        {
            Clock = ClockUncertainty.Of(mine.Sessions),
            Agreement = outcome is ReportIntervalFound ? SlotShapeAgreement.SlotGridOnly : SlotShapeAgreement.Neither,
            FrameInterval = Difference(outcome.FrameIntervalMs),
            ChainLines = condition == reference && chain is not null ? chain.Sittings : [],
        };
        return outcome switch
        {
            ReportIntervalFound found => finding with
            {
                Interval = new Estimate<LatencyDifference>(
                    LatencyDifference.FromMilliseconds(found.IntervalMs),
                    new(LatencyDifference.FromMilliseconds(found.LowMs), LatencyDifference.FromMilliseconds(found.HighMs)),
                    0.95,
                    found.Evidence.Kind == SlotGridKind.TwoGrids ? MethodName.TwoSlotGrids : MethodName.SlotSawtooth,
                    found.Trials,
                    mine.Series.Select(series => series.Sitting).Distinct().Count()),
                Evidence = found.Evidence,
                FixedDelay = FixedDelayEstimate.Of(found),
                FixedDelays = [.. found.Series.Select(series => new SessionFixedDelay(series.Sitting, series.FixedDelay))],
                Fold = SlotFolding.Of(found, mine.Usable),
            },
            ReportIntervalRefused refused => finding with
            {
                Unidentified = new UnidentifiedInterval(
                    refused.Reason,
                    Difference(refused.UpperMs),
                    [.. refused.ChoicesMs.Select(LatencyDifference.FromMilliseconds)]),
            },
            _ => finding,
        };
    }

    private static LatencyDifference? Difference(double? milliseconds) =>
        milliseconds is { } value ? LatencyDifference.FromMilliseconds(value) : null;
}
