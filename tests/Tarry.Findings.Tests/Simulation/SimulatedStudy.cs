using Tarry.Findings.Quality;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Tests.Simulation;

/// <summary>Whole studies with known truth, press by press: slots and frames are grids on clocks of their own, so that beats and locks come about as on a bench.</summary>
internal static class SimulatedStudy
{
    private const double ClockSdPpm = 30;

    /// <summary>The findings of one study.</summary>
    public static FindingsDocument Analyse(SimulatedDesign design, ulong seed)
    {
        var entries = design.Conditions.Select(condition => new ConditionEntry { Id = condition.Id, Factors = condition.Factors, NominalReportHz = condition.NominalReportHz }).ToList();
        return StudyAnalysis.Of(new StudyFile("simulated", entries[0].Id, design.MarginMs, entries, []), Samples(design, seed), refusedWithoutSession: 0, seed: 1, version: "test");
    }

    /// <summary>What the checks of its sessions say, without the rest of the analysis.</summary>
    public static IReadOnlyList<Caution> SessionCautions(SimulatedDesign design, ulong seed)
    {
        var rates = design.Conditions.ToDictionary(condition => condition.Id, condition => condition.NominalReportHz);
        return [.. SessionDiagnoses.Of(Samples(design, seed), id => rates[id]).SelectMany(diagnosis => diagnosis.Cautions)];
    }

    private static List<SessionSample> Samples(SimulatedDesign design, ulong seed)
    {
        var random = new SeededGenerator(seed);
        var samples = new List<SessionSample>();
        var present = design.Conditions.ToDictionary(condition => condition.Id, _ => 0);
        for (var sitting = 0; sitting < design.Sittings; sitting++)
        {
            var shared = design.SharedSdMs * random.NextNormal();
            foreach (var condition in design.Conditions)
            {
                var left = design.Sittings - sitting;
                if (random.NextDouble() < design.MissingShare && present[condition.Id] + left > 2)
                {
                    continue;
                }

                present[condition.Id]++;
                var unit = design.TwoValued ? (random.NextDouble() < 0.5 ? -1 : 1) : random.NextNormal();
                var offset = shared + (design.OwnSdMs * condition.OffsetFactor * unit);
                var affected = sitting < condition.AffectedSittings;
                samples.Add(Session(
                    $"s{sitting + 1}",
                    affected ? condition : condition with { Along = null, Presses = SimulatedPresses.Free },
                    offset,
                    design,
                    random));
            }
        }

        return samples;
    }

    private static SessionSample Session(string sitting, SimulatedCondition condition, double offset, SimulatedDesign design, SeededGenerator random)
    {
        var trials = design.Trials;
        var report = condition.ReportMs * (1 + (ClockSdPpm * 1e-6 * random.NextNormal()));
        var frame = condition.FrameMs * (1 + (ClockSdPpm * 1e-6 * random.NextNormal()));
        var (slotPhase, framePhase) = (report * random.NextDouble(), frame * random.NextDouble());
        var delay = condition.MeanMs + offset - (report / 2) - (frame / 2);
        var presses = new double[trials];
        var latencies = new List<double>(trials);
        var sequences = new List<long>(trials);
        var time = 1000 * random.NextDouble();
        for (var trial = 0; trial < trials; trial++)
        {
            time = condition.Presses switch
            {
                SimulatedPresses.Lattice => time + 98 + (4 * random.NextDouble()),
                SimulatedPresses.Locked => NextLocked(time, report, random),
                _ => time + 80 + (50 * random.NextDouble()),
            };
            var press = condition.Presses == SimulatedPresses.Locked ? time + (0.4 * random.NextDouble()) : time;
            presses[trial] = press;
            if (condition.MissedShare > 0 && random.NextDouble() < condition.MissedShare)
            {
                continue;
            }

            var slot = slotPhase + (report * Math.Ceiling((press - slotPhase) / report));
            var sent = slot + (condition.SlotJitterMs * (random.NextDouble() - 0.5));
            if (condition.LateShare > 0 && random.NextDouble() < condition.LateShare)
            {
                sent -= condition.LateMeanMs * Math.Log(1 - random.NextDouble());
            }

            var shown = sent + delay + (condition.Along?.Invoke(trial, trials) ?? 0);
            if (frame > 0)
            {
                shown = framePhase + (frame * Math.Ceiling((shown - framePhase) / frame));
            }

            // A microsecond, as a timer of 1 MHz reads it.
            latencies.Add(Math.Round(1000 * (shown - press + (condition.NoiseSdMs * random.NextNormal()))) / 1000);
            sequences.Add(trial + 1);
        }

        var key = new SessionKey(sitting, condition.Id);
        return new SessionSample
        {
            Key = key,
            Record = new SessionRecord
            {
                Key = key,
                Segments = [new Segment(null, 1, 1_000_000, null)],
                Source = new SourceFile("simulated.csv", "00", "test", new Dictionary<string, string>(), trials),
            },
            Counts = new SessionCounts(latencies.Count, trials - latencies.Count, 0, 0, 0),
            Latencies = new Sample(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(latencies), trials - latencies.Count),
            Sequences = [.. sequences],
            PressTimesMs = design.KnowsPressTimes ? presses : [],
            ResolutionMs = 0.001,
            IntervalCensored = false,
            ExclusionReasons = [],
        };
    }

    private static double NextLocked(double time, double report, SeededGenerator random) =>
        report * (Math.Floor((time / report) + 0.5) + 9 + random.NextInt32(8));
}
