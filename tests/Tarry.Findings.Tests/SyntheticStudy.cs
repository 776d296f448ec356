using Tarry.Findings.Play;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.Censoring;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Tests;

/// <summary>
/// Studies with known truth: latency = fixed + Uniform(0, report interval) + Uniform(0, 4.1 ms) + Normal(0, 0.3 ms),
/// plus an offset of the sitting that its conditions share and one of each session that they do not.
/// </summary>
internal sealed class SyntheticStudy(ulong seed)
{
    private readonly SeededGenerator random = new(seed);
    private readonly List<SessionSample> samples = [];
    private readonly List<ConditionEntry> conditions = [];

    public int Trials { get; init; } = 240;

    public double SharedSd { get; init; } = 0.2;

    /// <summary>The sessions made so far.</summary>
    public IReadOnlyList<SessionSample> Samples => samples;

    public double OwnSd { get; init; } = 0.1;

    /// <summary>Report rates that are stated of conditions, by id.</summary>
    public Dictionary<string, double> Rates { get; } = [];

    /// <summary>Whether shapes are fitted: they take longer than all else together.</summary>
    public bool WithShapes { get; init; }

    public static double MeanOf(double fixedMs, double reportMs) => fixedMs + (reportMs / 2) + 2.05;

    /// <summary>Adds conditions that are run together in each of the sittings, the first of them the reference.</summary>
    public SyntheticStudy Add(int sittings, params (string Id, double FixedMs, double ReportMs)[] together)
    {
        foreach (var (id, _, _) in together)
        {
            conditions.Add(new ConditionEntry { Id = id, Factors = new Dictionary<string, string> { ["link"] = "usb" } });
        }

        for (var sitting = 0; sitting < sittings; sitting++)
        {
            var shared = SharedSd * random.NextNormal();
            foreach (var (id, fixedMs, reportMs) in together)
            {
                var offset = shared + (OwnSd * random.NextNormal());
                samples.Add(Session($"s{sitting + 1}", id, Draw(fixedMs + offset, reportMs)));
            }
        }

        return this;
    }

    public SyntheticStudy AddSession(string sitting, string id, double[] latencies, int missed = 0, double[]? pressTimesMs = null, Segment[]? live = null, bool isSealed = true)
    {
        if (conditions.All(condition => condition.Id != id))
        {
            conditions.Add(new ConditionEntry { Id = id, Factors = new Dictionary<string, string> { ["link"] = "usb" }, NominalReportHz = 125 });
        }

        samples.Add(Session(sitting, id, latencies, missed, pressTimesMs, live, isSealed: isSealed));
        return this;
    }

    /// <summary>Adds a session whose latencies are known as intervals.</summary>
    public SyntheticStudy AddBounded(string sitting, string id, CensoredValue[] bounds)
    {
        if (conditions.All(condition => condition.Id != id))
        {
            conditions.Add(new ConditionEntry { Id = id, Factors = new Dictionary<string, string> { ["link"] = "usb" } });
        }

        samples.Add(Session(sitting, id, [.. bounds.Select(bound => (bound.Low + bound.High) / 2)], bounds: bounds));
        return this;
    }

    public double[] Draw(double fixedMs, double reportMs)
    {
        var values = new double[Trials];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = fixedMs + (reportMs * random.NextDouble()) + (4.1 * random.NextDouble()) + (0.3 * random.NextNormal());
        }

        return values;
    }

    public FindingsDocument Analyse(double marginMs = 0.5, PlaySettings? play = null) => StudyAnalysis.Of(
        new StudyFile("synthetic", conditions.Count > 0 ? conditions[0].Id : null, marginMs, [.. conditions.Select(WithRate)], []),
        samples,
        refusedWithoutSession: 0,
        seed: 1,
        version: "test",
        play: play,
        withShapes: WithShapes);

    private ConditionEntry WithRate(ConditionEntry condition) =>
        Rates.TryGetValue(condition.Id, out var rate) ? condition with { NominalReportHz = rate } : condition;

    private static SessionSample Session(string sitting, string id, double[] latencies, int missed = 0, double[]? pressTimesMs = null, Segment[]? live = null, CensoredValue[]? bounds = null, bool isSealed = true)
    {
        var key = new SessionKey(sitting, id);
        return new SessionSample
        {
            Key = key,
            Record = new SessionRecord
            {
                Key = key,
                Segments = live ?? [new Segment(null, 1, 1_000_000, null)],
                Source = live is not null ? null : new SourceFile("synthetic.csv", "00", "test", new Dictionary<string, string>(), latencies.Length),
            },
            Counts = new SessionCounts(latencies.Length, missed, 0, 0, 0),
            Sealed = isSealed,
            Latencies = new Sample(latencies, missed),
            Sequences = [.. Enumerable.Range(1, latencies.Length).Select(i => (long)i)],
            PressTimesMs = pressTimesMs ?? [],
            ResolutionMs = 0,
            IntervalCensored = bounds is not null,
            BoundsMs = bounds,
            ExclusionReasons = [],
        };
    }
}
