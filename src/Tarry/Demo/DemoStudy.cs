using Tarry.Metrology;
using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Demo;

/// <summary>Captures the demonstration's study on the simulated bench, as a tester would: sitting by sitting, in random order.</summary>
internal sealed class DemoStudy(string folder, uint seed)
{
    private const double SharedOffsetSdMs = 0.15;
    private const double OwnOffsetSdMs = 0.06;
    private const uint RestartAtTrial = 250;

    public Study Capture(Action<int, int, SessionKey> progress, CancellationToken cancellation)
    {
        var study = Study.Create(folder, DemoScenario.Title, DemoScenario.Reference, DemoScenario.MarginMs);
        using var held = study.AcquireLock("tarry demo");
        foreach (var condition in DemoScenario.Conditions)
        {
            study.AddCondition(held, condition.Entry);
        }

        var random = new SeededGenerator(seed);
        var done = 0;
        var total = (DemoScenario.Sittings.Count * DemoScenario.Conditions.Count) + DemoSticks.Count;
        foreach (var sitting in DemoScenario.Sittings)
        {
            var shared = SharedOffsetSdMs * random.NextNormal();
            foreach (var condition in Shuffled(random))
            {
                cancellation.ThrowIfCancellationRequested();
                var key = new SessionKey(sitting, condition.Entry.Id);
                progress(done++, total, key);
                var offset = shared + (OwnOffsetSdMs * random.NextNormal());
                Capture(study, held, key, condition.Device with { SittingOffsetMs = offset }, random, cancellation);
            }
        }

        DemoSticks.Record(study, held, seed, key => progress(done++, total, key), cancellation);
        study.AddExclusion(held, new Exclusion(new SessionKey("monday", "sedge-dongle"), "the frame cap was off until trial 40", 1, 40));
        return study;
    }

    private static void Capture(Study study, StudyLock held, SessionKey key, SimulatedDevice device, SeededGenerator random, CancellationToken cancellation)
    {
        var lattice = key.Condition == DemoScenario.Lattice;
        var restarts = key is { Condition: DemoScenario.Rebooted, Sitting: DemoScenario.RebootedSitting };
        if (key is { Condition: DemoScenario.Drifting, Sitting: DemoScenario.DriftingSitting })
        {
            device = device with { WarmUpMs = 1.6, WarmUpSeconds = 40 };
        }

        var settings = RunRequest.DefaultSettings with { Seed = (uint)(random.NextUInt64() >> 33) + 1 };
        var request = new RunRequest
        {
            Key = key,
            Settings = lattice ? settings with { IntervalMinUs = 99_800, IntervalMaxUs = 100_200 } : settings,
            Trials = DemoScenario.TrialsPerSession,
            AllowNarrowInterval = lattice,
            Bench = new BenchNotes { Host = "simulated host", Application = "simulated light target", FrameCapHz = 1000 / 4.1 },
        };
        var bench = new SimulatedRigPortSource(device with
        {
            ReportPhaseMs = device.ReportIntervalMs * random.NextDouble(),
            ConnectionPhaseMs = device.ConnectionIntervalMs * random.NextDouble(),
            FramePhaseMs = device.FrameIntervalMs * random.NextDouble(),
        }, new SimulatedRigOptions
        {
            Seed = random.NextUInt64(),
            RateErrorPpm = 18,
            RestartsAtTrials = restarts ? [RestartAtTrial] : [],
        });
        if (!new CaptureRun(study, held, request, bench).Run(cancellation).Completed)
        {
            throw new OperationCanceledException(cancellation);
        }
    }

    private static DemoCondition[] Shuffled(SeededGenerator random)
    {
        var order = DemoScenario.Conditions.ToArray();
        for (var i = order.Length - 1; i > 0; i--)
        {
            var other = random.NextInt32(i + 1);
            (order[i], order[other]) = (order[other], order[i]);
        }

        return order;
    }
}
