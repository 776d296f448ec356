using Tarry.Findings;
using Tarry.Findings.Budgets;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Findings.DeviceOnly;
using Tarry.Findings.Play;
using Tarry.Findings.Quality;
using Tarry.Findings.ReportIntervals;
using Tarry.Metrology;
using Tarry.Statistics.Uncertainty;
using Tarry.Studies.Sessions;

namespace Tarry.Reports.Tests;

/// <summary>Findings made by hand, of invented devices. The numbers only have to agree with each other.</summary>
internal static class Samples
{
    public static Estimate<Latency> Latency(double value, double half, int sessions = 4, int trials = 6000, string method = MethodName.ModeratedSessionMeans) =>
        new(Metrology.Latency.FromMilliseconds(value), new(Metrology.Latency.FromMilliseconds(value - half), Metrology.Latency.FromMilliseconds(value + half)), 0.95, method, trials, sessions);

    public static Estimate<LatencyDifference> Difference(double value, double half, int sessions = 4, int trials = 12000, string method = MethodName.ModeratedPaired) =>
        new(LatencyDifference.FromMilliseconds(value), new(LatencyDifference.FromMilliseconds(value - half), LatencyDifference.FromMilliseconds(value + half)), 0.95, method, trials, sessions);

    public static Estimate<Proportion> Share(double value, double low, double high, int sessions = 4, int trials = 6000) =>
        new(Proportion.FromFraction(value), new(Proportion.FromFraction(low), Proportion.FromFraction(high)), 0.95, MethodName.ClopperPearsonOverAgreeingSessions, trials, sessions);

    public static Caution Caution(CautionKind kind, string subject, params (string Name, double Value)[] numbers) =>
        new(kind, subject, numbers.ToDictionary(number => number.Name, number => number.Value));

    /// <summary>A condition whose latencies are a report slot wait after a fixed delay, with a late lump.</summary>
    public static ConditionFinding Condition(string id, double mean, double slot, int sessions = 4, bool reference = false, double late = 0, long missed = 0)
    {
        var counts = new SessionCounts(1500 - missed, missed, 0, 0, 0);
        var list = Enumerable.Range(0, sessions).Select(index => new SessionFinding(
            new(Sittings[index], id), counts, Latency(mean + (0.04 * index), 0.1, 1, (int)counts.Used), LatencyDifference.FromMilliseconds(slot / 3), true, [])
        {
            RunChart = Chart(mean, slot, late, index),
        }).ToList();
        var all = list.Aggregate(default(SessionCounts), (sum, session) => sum + session.Counts);
        var trials = (int)all.Used;
        var low = mean - (slot / 2);
        return new()
        {
            Id = id,
            Factors = new Dictionary<string, string> { ["device"] = "Model " + id, ["unit"] = "serial 0041", ["link"] = "usb" },
            NominalReportHz = 1000,
            IsReference = reference,
            Chain = new()
            {
                Boards = ["uno"],
                RigFirmware = ["0.1.0"],
                Responses = ["light"],
                Hosts = ["bench host"],
                Applications = ["target window"],
                FrameCapsHz = [244],
                RefreshRatesHz = [],
            },
            Sessions = list,
            Counts = all,
            Mean = sessions == 0 ? new NotEnough<Latency>(0, 2, "trials") : Latency(mean, sessions == 1 ? 0.05 : 0.11 + (slot * 0.02), sessions, trials),
            MeanWithBetweenSessions = sessions == 1 ? Latency(mean, 0.31, 1, trials, MethodName.WithinSessionPlusPooledScatter) : null,
            Median = Latency(mean - 0.02, 0.12, sessions, trials, MethodName.OrderStatisticsPlusSessionScatter),
            P05 = Latency(low + (0.05 * slot), 0.08, sessions, trials, MethodName.OrderStatisticsPlusSessionScatter),
            P25 = Latency(low + (0.25 * slot), 0.08, sessions, trials, MethodName.OrderStatisticsPlusSessionScatter),
            P75 = Latency(low + (0.75 * slot), 0.08, sessions, trials, MethodName.OrderStatisticsPlusSessionScatter),
            P95 = Latency(mean + (slot * 0.45) + (late * 40), 0.2, sessions, trials, MethodName.OrderStatisticsPlusSessionScatter),
            P99 = trials < 3000 ? new NotEnough<Latency>(trials, 3000, "trials") : Latency(mean + (slot * 0.5) + (late * 200), 0.6, sessions, trials, MethodName.OrderStatisticsPlusSessionScatter),
            StandardDeviation = Difference(slot / 3.46, 0.05, sessions, trials, MethodName.ModeratedLogScale),
            Spread = Difference((slot * 0.9) + (late * 40), 0.2, sessions, trials, MethodName.ModeratedLogScale),
            LateShare = Share(late, late * 0.8, (late * 1.2) + 0.0006, sessions, trials),
            LateBeyond = new(Metrology.Latency.FromMilliseconds(mean + 10), "median + 10 ms"),
            MissedShare = Share(missed / 1500.0, missed * 0.8 / 1500, (missed * 1.2 / 1500) + 0.0006, sessions, trials),
            Relative = null,
            Budget = sessions == 0 ? null : Budget(mean),
            ReportInterval = sessions > 1 ? Interval(mean, slot, trials, sessions) : null,
            DeviceOnly = reference ? null : Alone(mean, slot, sessions, trials, missed),
            Density = Density(low, slot, late),
            Distribution = trials == 0 ? null : new([.. Enumerable.Range(0, 101).Select(step => new DistributionPoint(low + (slot * step / 100), step * 0.01 * trials / (trials + all.Missed)))], trials + (int)all.Missed, Statistics.Quantiles.DistributionBand.HalfHeight(trials + (int)all.Missed), 0.95),
            Cautions = [],
        };
    }

    /// <summary>A device alone: a block of its slot with a band; where trials are missed, none, for want of trials.</summary>
    public static DeviceOnlyFinding Alone(double mean, double slot, int sessions, int trials, long missed)
    {
        var isRefused = sessions == 0 || missed > 0;
        List<double> density = [.. Enumerable.Range(0, (int)Math.Ceiling(slot / 0.1) + 8).Select(i => i is < 4 or > 500 || i > (slot / 0.1) + 4 ? 0.01 : 1 / slot)];
        return new()
        {
            Mean = sessions == 0 ? new NotEnough<LatencyDifference>(0, 1, "sessions of a reference condition") : Difference(mean - 2, 0.15, sessions, trials),
            StandardDeviation = sessions == 0 ? new NotEnough<LatencyDifference>(0, 1, "sittings in which the reference and the condition are sound")
                : slot < 1.15 ? new AtMost<LatencyDifference>(LatencyDifference.FromMilliseconds(0.4), 0.95, MethodName.ModeratedVarianceDifference, trials, sessions)
                : Difference(slot / 3.46, 0.05, sessions, trials, MethodName.ModeratedVarianceDifference),
            Density = isRefused ? null : new(
                mean - 2 - (slot / 2) - 0.4,
                0.1,
                density,
                [.. density.Select(value => value * 0.8)],
                [.. density.Select(value => (value * 1.3) + 0.01)],
                0.9,
                40,
                0,
                trials,
                trials),
            Refusal = isRefused ? new(DeviceOnlyRefusalKind.TooFewTrials, new Dictionary<string, double> { ["trials"] = 120, ["need"] = 400, ["reference_trials"] = 6000, ["reference_need"] = 400 }) : null,
            ReferenceSlot = new(1, slot > 1.15 ? ReferenceSlotSource.Declared : ReferenceSlotSource.Assumed),
            Sittings = [.. Sittings.Take(sessions)],
        };
    }

    /// <summary>A budget of a rig that was not calibrated: a clock known to 3,000 ppm, 4 us of tick, and sampling.</summary>
    public static ConditionBudget Budget(double mean)
    {
        BudgetInput clock = new(UncertaintySource.ClockRate, "ppm", 0, 5000, UncertaintyDistribution.Rectangular, 2886.75, 8, "no clock fit: +-0.5 %");
        BudgetInput tick = new(UncertaintySource.Tick, "us", 2, 2, UncertaintyDistribution.Rectangular, 1.1547, double.PositiveInfinity, "the counter is read to 4 us");
        var uncertainty = new ExpandedUncertainty(0.05, 12, 2.18, 0.95);
        var stated = new StatedUncertainty(LatencyDifference.FromMilliseconds(-0.002), uncertainty,
        [
            new(UncertaintySource.ClockRate, -mean / 1e6, mean * 0.00289, 8, false),
            new(UncertaintySource.Tick, -0.001, 0.0011547, double.PositiveInfinity, false),
            new(UncertaintySource.Sampling, 1, 0.04, 12, false),
        ]);
        var absolute = new AbsoluteLatency(
            Metrology.Latency.FromMilliseconds(mean - 0.002),
            new(Metrology.Latency.FromMilliseconds(mean - 0.111), Metrology.Latency.FromMilliseconds(mean + 0.107)),
            stated);
        return new(false, [clock, tick], null, null, absolute, null, null, null, null);
    }

    /// <summary>Twelve conditions as a tester meets them: wires, dongles, a radio link that loses, one sitting, a drift, exclusions.</summary>
    public static FindingsDocument TwelveConditions()
    {
        List<ConditionFinding> conditions =
        [
            Condition("bench-board", 2.13, 0.4, reference: true),
            Condition("quill-usb", 3.42, 1.1),
            Condition("quill-dongle", 5.31, 2.4, late: 0.012),
            Condition("tern-usb", 3.51, 1.2),
            Condition("tern-usb-relay-layer", 4.12, 1.3),
            Condition("marl-pad-500", 4.03, 2.3),
            Condition("marl-pad-radio", 11.62, 7.9, late: 0.03, missed: 18),
            Condition("osier-stick", 6.92, 8.4),
            Condition("osier-stick-capped", 7.05, 8.6, sessions: 3),
            Condition("fathom-wheel", 9.41, 8.1, sessions: 1),
            Condition("pinion-keys", 5.22, 1.4),
            Condition("pinion-keys-125", 8.87, 8.3),
        ];
        conditions[4] = conditions[4] with
        {
            Sessions = [.. conditions[4].Sessions.Select((session, index) => index == 1
                ? session with { Counts = new(0, 0, 0, 0, 1500), ExclusionReasons = ["frame cap was off"] }
                : index == 2 ? session with { Counts = new(1380, 0, 3, 7, 110), ExclusionReasons = ["a cable was moved, trials 400 to 509"] } : session)],
            Counts = new(4380, 0, 3, 7, 1610),
            Mean = Latency(4.12, 0.19, 3, 4380),
        };
        conditions[6] = conditions[6] with
        {
            Cautions =
            [
                Caution(CautionKind.MissedShare, "marl-pad-radio", ("missed", 72), ("presses", 6000), ("missed_percent", 1.2)),
                Caution(CautionKind.LossFavours, "marl-pad-radio", ("missed_percent", 1.2)),
                Caution(CautionKind.Modes, "marl-pad-radio", ("modes", 3)),
            ],
        };
        conditions[9] = conditions[9] with { Cautions = [Caution(CautionKind.OneSitting, "fathom-wheel"), Caution(CautionKind.OneUnit, "fathom-wheel")] };
        conditions[10] = conditions[10] with { Cautions = [Caution(CautionKind.Drift, "tuesday.pinion-keys", ("drift_ms", 0.41))] };
        return Document("Three pads and a dongle", conditions) with
        {
            Counts = conditions.Aggregate(new SessionCounts(0, 0, 0, 4, 0), (sum, condition) => sum + condition.Counts),
            Cautions = [Caution(CautionKind.UnequalVariances, "wire and radio", ("smallest_ms", 0.08), ("largest_ms", 0.4)), Caution(CautionKind.RefusedRows, "the study", ("refused", 4))],
        };
    }

    /// <summary>A document of some conditions, with pairs and ranking that follow from their means and intervals.</summary>
    public static FindingsDocument Document(string title, IReadOnlyList<ConditionFinding> conditions)
    {
        var ranked = conditions.Where(condition => condition.Mean is Estimate<Latency>).OrderBy(MeanOf).ToList();
        var ranking = new List<RankedCondition>();
        var (group, leader) = (0, double.NegativeInfinity);
        for (var index = 0; index < ranked.Count; index++)
        {
            var mean = MeanOf(ranked[index]);
            if (mean - leader > 0.3)
            {
                (group, leader) = (group + 1, mean);
            }

            ranking.Add(new(
                ranked[index].Id,
                1 + ranked.Count(other => MeanOf(other) < mean - 0.3),
                ranked.Count(other => MeanOf(other) <= mean + 0.3),
                group));
        }

        List<ComparisonFinding> pairs = [.. conditions.SelectMany((a, index) => conditions.Skip(index + 1).Select(b => Pair(b, a)))];
        var reference = conditions.FirstOrDefault(condition => condition.IsReference)?.Id;
        return new()
        {
            Title = title,
            Reference = reference,
            MarginMs = 0.5,
            Seed = 1,
            Version = "0.1.0",
            Counts = conditions.Aggregate(default(SessionCounts), (sum, condition) => sum + condition.Counts),
            Conditions = [.. conditions.Select(condition => condition with { Relative = pairs.FirstOrDefault(pair => pair.A == condition.Id && pair.B == reference)?.Difference })],
            Comparisons = pairs,
            Ranking = ranking,
            Play = PlayOf([.. conditions.Where(condition => condition.Mean is Estimate<Latency>)]),
            Cautions = [],
        };
    }

    /// <summary>What conditions of such spreads could mean for play: the later, the fewer hits.</summary>
    public static StudyPlay? PlayOf(IReadOnlyList<ConditionFinding> conditions)
    {
        if (conditions.Count == 0)
        {
            return null;
        }

        var settings = PlaySettings.Of(null);
        var pairs = settings.PlayerSdsMs.SelectMany(player => settings.WindowsMs.Select(window => (player, window))).ToList();
        double Hits(int place, double player, double window) => (1 - Math.Exp(-window / (2 + player))) * (1 - (0.01 * place));
        Estimate<Proportion> HitShare(double value, int sessions) => new(
            Proportion.FromFraction(value),
            new(Proportion.FromFraction(value * 0.99), Proportion.FromFraction(1 - ((1 - value) * 0.99))),
            0.95,
            sessions == 1 ? MethodName.HitsWithinSession : MethodName.HitsOverSessions,
            6000,
            sessions);
        return new StudyPlay(
            settings,
            [.. conditions.Select((condition, place) => new PlayFinding
            {
                Id = condition.Id,
                Learned = condition.Median is Estimate<Latency> median ? median.Value : null,
                DeviceError = Difference(1.2, 0.1, method: MethodName.ModeratedLogScale),
                ErrorsWithPlayerMs = [1.2, 8.1],
                Windows = [.. pairs.Select(pair => new PlayWindow
                {
                    PlayerSdMs = pair.player,
                    WindowMs = pair.window,
                    HitProbability = HitShare(Hits(place, pair.player, pair.window), condition.UsedSessions),
                    Compensation = Metrology.Latency.FromMilliseconds(5),
                    GoodCompensations = [new(Metrology.Latency.FromMilliseconds(4), Metrology.Latency.FromMilliseconds(6))],
                })],
                Curves = [.. settings.PlayerSdsMs.Select(player => new PlayCurve(player, 0.5, [.. Enumerable.Range(1, 80).Select(step => Hits(place, player, 0.5 * step))]))],
            })],
            [.. pairs.Select(pair => new PlayRanking(pair.player, pair.window, [.. conditions.Select((condition, place) => new RankedCondition(condition.Id, place + 1, place + 1, place + 1))]))],
            []);
    }

    public static ComparisonFinding Comparison(Verdict verdict, double difference = 1.2, string a = "quill-usb", string b = "tern-usb") => new()
    {
        A = a,
        B = b,
        Difference = Difference(difference, 0.3),
        AdjustedP = 0.012,
        MarginMs = 0.5,
        Verdict = verdict,
        MinimumDetectable = LatencyDifference.FromMilliseconds(0.43),
        Needed = verdict == Verdict.Undecided ? new(9, 1500) : null,
    };

    private static readonly string[] Sittings = ["monday", "tuesday", "wednesday", "thursday"];

    private static double MeanOf(ConditionFinding condition) => ((Estimate<Latency>)condition.Mean).Value.Milliseconds;

    private static ComparisonFinding Pair(ConditionFinding a, ConditionFinding b)
    {
        if (a.Mean is not Estimate<Latency> meanA || b.Mean is not Estimate<Latency> meanB)
        {
            return Comparison(Verdict.Undecided, 0, a.Id, b.Id) with { Difference = new NotEnough<LatencyDifference>(0, 1, "sessions"), AdjustedP = null, MinimumDetectable = null, Needed = null };
        }

        var difference = meanA.Value.Milliseconds - meanB.Value.Milliseconds;
        var size = Math.Abs(difference);
        var once = Math.Min(meanA.Sessions, meanB.Sessions) == 1;
        var verdict = once ? Verdict.Undecided
            : size > 0.8 ? difference > 0 ? Verdict.Slower : Verdict.Faster
            : size > 0.6 ? Verdict.Undecided
            : size > 0.25 ? Verdict.BelowMargin
            : Verdict.NoDifferenceThatMatters;
        return Comparison(verdict, difference, a.Id, b.Id) with
        {
            Difference = Difference(difference, once ? 0.06 : verdict == Verdict.Undecided ? 0.9 : 0.2, once ? 1 : 4, once ? 3000 : 12000),
            AdjustedP = once ? null : verdict is Verdict.Undecided or Verdict.NoDifferenceThatMatters ? 0.41 : 0.00003,
            MinimumDetectable = once ? null : LatencyDifference.FromMilliseconds(0.43),
            Needed = verdict == Verdict.Undecided && !once ? new(9, 1500) : null,
        };
    }

    private static ReportIntervalFinding Interval(double mean, double slot, int trials, int sessions) => new()
    {
        Interval = Difference(slot, 0.00001, sessions, trials, MethodName.TwoSlotGrids),
        Clock = new(50, "a crystal"),
        Agreement = SlotShapeAgreement.SlotGridOnly,
        FrameInterval = slot > 2 ? LatencyDifference.FromMilliseconds(4.1) : null,
        Fold = new(
            [.. Enumerable.Range(0, 200).Select(i => new SlotFoldPoint(slot * i / 200, mean + (slot / 2) - (slot * i / 200), 0.01 * (i % 9)))],
            [.. Enumerable.Range(0, 48).Select(bin => new SlotFoldBin(bin == 7 ? 0 : 100, bin == 7 ? 0 : mean + (slot / 2) - (slot * bin / 48)))],
            [.. Enumerable.Range(0, 48).Select(bin => bin is 0 or 47 ? 900 : 3)],
            slot > 2 ? [.. Enumerable.Range(0, 48).Select(bin => bin is 23 or 24 ? 900 : 3)] : []),
    };

    private static RunChart Chart(double mean, double slot, double late, int session) => new(
        [.. Enumerable.Range(0, 40).Select(batch => (1500 * batch / 40, mean + (slot * 0.05 * Math.Sin(batch + session)))).Select(batch =>
            new RunChartBatch(batch.Item1 + 1, batch.Item1 + 37, batch.Item2, batch.Item2 - (slot * 0.45), batch.Item2 + (slot * 0.45)))],
        late > 0 ? [new(40, mean + 12), new(900, mean + 31)] : [],
        late > 0 ? 2 : 0);

    private static DensityCurve Density(double low, double slot, double late)
    {
        const double step = 0.05;
        var from = Math.Max(0, low - 0.6);
        var end = late > 0 ? low + 60 : low + slot + 1;
        var points = Enumerable.Range(0, (int)((end - from) / step)).Select(index =>
        {
            var x = from + (index * step);
            var block = (Edge((x - low) / 0.12) - Edge((x - low - slot) / 0.12)) / slot;
            var tail = x > low + slot ? Math.Exp(-(x - low - slot) / 9) / 9 : 0;
            return ((1 - late) * block) + (late * tail);
        });
        return new(from, step, [.. points], 0.12);
    }

    private static double Edge(double z) => 1 / (1 + Math.Exp(-1.7 * z));
}
