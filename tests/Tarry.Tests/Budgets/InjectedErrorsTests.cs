using Tarry.Findings;
using Tarry.Findings.Budgets;
using Tarry.Metrology;
using Tarry.Rig.Proofs;
using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Tests.Budgets;

/// <summary>
/// Studies captured on a bench whose rig is wrong in known ways: clock 3,000 ppm fast, 4 us ticks, 20 us from the light to the threshold,
/// 18 us from the pin to the contact. What is stated must hold the truth that was injected.
/// </summary>
public class InjectedErrorsTests
{
    private const int Studies = 24;
    private const int Sittings = 3;
    private const double MeanOfRef = 3 + 0.5;
    private const double MeanOfPad = 6 + 4;

    private static readonly SimulatedRigOptions Wrong = new()
    {
        RateErrorPpm = 3000,
        TickHz = 250_000,
        ThresholdDelayUs = 20,
        ActuatorDelayUs = 18,
    };

    [Theory]
    [InlineData(true, 260)]
    [InlineData(false, 260)]
    [InlineData(false, 70)]
    public void Absolute_OfManyStudies_HoldsTheTruthAtTheStatedRate(bool calibrated, int trials)
    {
        var held = 0;
        for (ulong seed = 1; seed <= Studies; seed++)
        {
            using var bench = new Bench(seed, calibrated, trials);
            foreach (var condition in bench.Document.Conditions)
            {
                var budget = condition.Budget!;
                Assert.Equal(calibrated, budget.Calibrated);

                // 70 presses take under ten seconds: their clock is not fitted, and its class must cover 3,000 ppm.
                var clock = Assert.Single(budget.Inputs, input => input.Source == UncertaintySource.ClockRate);
                Assert.Equal(trials > 100, clock.HalfWidth is null);
                held += budget.Mean!.Interval.Contains(Latency.FromMilliseconds(condition.Id == "ref" ? MeanOfRef : MeanOfPad)) ? 1 : 0;

                // Against the presses that there were, sampling says nothing: the rig's part alone must hold every time.
                var presses = bench.TrueMeansMs[condition.Id];
                var sampling = budget.Mean.Stated.Contributions.Single(part => part.Source == UncertaintySource.Sampling).Milliseconds;
                var rig = Math.Sqrt(Math.Pow(budget.Mean.Stated.Uncertainty.Standard, 2) - (sampling * sampling));
                Assert.InRange(Math.Abs(budget.Mean.Value.Milliseconds - presses), 0, 2 * rig);
            }
        }

        // Both conditions of a study share its sittings, so the studies count. Limits that are wider than what was injected only help.
        Assert.InRange(held / (2.0 * Studies), 0.95 - (3 * Math.Sqrt(0.95 * 0.05 / Studies)), 1);
    }

    [Fact]
    public void Absolute_OfACalibratedRig_IsCorrectedForItsOwnDelay()
    {
        using var calibrated = new Bench(1, calibrated: true, trials: 260);
        var mean = calibrated.Document.Conditions[0].Budget!.Mean!;
        var loop = calibrated.Document.Conditions[0].Budget!.Inputs.Single(input => input.Source == UncertaintySource.LoopBackDelay);
        Assert.InRange(loop.Estimate, 38 - 4, 38 + 4);
        Assert.DoesNotContain(mean.Stated.Contributions, part => part.Source is UncertaintySource.ThresholdDelay or UncertaintySource.ActuatorDelay);

        // Two ticks of 4 us, rectangular: what a loop through the actuator leaves open; without the correction 38 us would be.
        Assert.InRange(RigPart(mean.Stated), 0, 0.0035);
        using var uncalibrated = new Bench(1, calibrated: false, trials: 260);
        var wider = uncalibrated.Document.Conditions[0].Budget!;
        Assert.Contains("not calibrated", wider.Inputs.Single(input => input.Source == UncertaintySource.ThresholdDelay).Basis, StringComparison.Ordinal);
        Assert.True(RigPart(wider.Mean!.Stated) > 10 * RigPart(mean.Stated));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Difference_WithinSittings_IsNotWidenedByWhatCancels(bool calibrated)
    {
        var held = 0;
        for (ulong seed = 1; seed <= Studies; seed++)
        {
            using var bench = new Bench(100 + seed, calibrated, 260);
            var comparison = Assert.Single(bench.Document.Comparisons);
            var stated = comparison.Budget!;
            UncertaintySource[] common = [UncertaintySource.Tick, UncertaintySource.ThresholdDelay, UncertaintySource.ActuatorDelay, UncertaintySource.LoopBackDelay];
            Assert.All(stated.Contributions.Where(part => common.Contains(part.Source)), part => Assert.True(part is { Cancels: true, Milliseconds: 0 }, part.ToString()));
            Assert.Equal(0, stated.Correction.Milliseconds);
            var sampling = stated.Contributions.Single(part => part.Source == UncertaintySource.Sampling).Milliseconds;
            Assert.InRange(stated.Uncertainty.Standard, sampling, 1.001 * sampling);

            // The host's clock is common: it acts on the 6.5 ms of difference, not on 10 ms.
            var host = stated.Contributions.Single(part => part.Source == UncertaintySource.HostClock).Milliseconds;
            Assert.InRange(host, 50e-6 / Math.Sqrt(3) * 6, 50e-6 / Math.Sqrt(3) * 7);
            var difference = Assert.IsType<Estimate<LatencyDifference>>(comparison.Difference).Value.Milliseconds;
            held += Math.Abs(difference - (MeanOfRef - MeanOfPad)) <= stated.Uncertainty.Expanded ? 1 : 0;
        }

        Assert.InRange(held / (double)Studies, 0.95 - (3 * Math.Sqrt(0.95 * 0.05 / Studies)), 1);
    }

    [Fact]
    public void Difference_WithAClockThatWasNotFitted_IsScaledByTheDifferenceOnly()
    {
        using var bench = new Bench(7, calibrated: false, trials: 70);
        var comparison = Assert.Single(bench.Document.Comparisons);
        var difference = Math.Abs(Assert.IsType<Estimate<LatencyDifference>>(comparison.Difference).Value.Milliseconds);

        // 5,000 ppm rectangular (GUM 4.3.7), on 6.5 ms and not on the 10 and 3.5 ms that it is between.
        var clock = comparison.Budget!.Contributions.Single(part => part.Source == UncertaintySource.ClockRate).Milliseconds;
        Assert.Equal(5000e-6 / Math.Sqrt(3) * difference, clock, 1e-9);
    }

    private static double RigPart(StatedUncertainty stated) =>
        Math.Sqrt(stated.Contributions.Where(part => part.Source != UncertaintySource.Sampling).Sum(part => part.Milliseconds * part.Milliseconds));

    /// <summary>One study of two conditions in three sittings, and what was injected.</summary>
    private sealed class Bench : IDisposable
    {
        private readonly TemporaryFolder folder = new();
        private readonly SeededGenerator random;

        public Bench(ulong seed, bool calibrated, int trials)
        {
            random = new SeededGenerator(seed);
            var study = Study.Create(folder["study"], "wrong in known ways", "ref", 0.5);
            using var held = study.AcquireLock("test");
            if (calibrated)
            {
                var loop = new SimulatedRigPortSource(new SimulatedDevice(), Wrong with { Seed = seed });
                var proof = new RigProof(loop, new ProofRequest { Response = "light", ThroughActuator = true }).Run(TestContext.Current.CancellationToken);
                Assert.True(proof.Passed, string.Join('\n', proof.Points));
                study.AddCalibration(held, proof.Calibration!);
            }

            foreach (var (id, fixedMs, reportMs) in new[] { ("ref", 3.0, 1.0), ("pad", 6.0, 8.0) })
            {
                study.AddCondition(held, new ConditionEntry { Id = id, Factors = new Dictionary<string, string>() });
                for (var sitting = 0; sitting < Sittings; sitting++)
                {
                    var mean = Capture(study, held, new SessionKey($"s{sitting}", id), fixedMs, reportMs, trials);
                    TrueMeansMs[id] = TrueMeansMs.GetValueOrDefault(id) + (mean / Sittings);
                }
            }

            Document = StudyAnalysis.Run(study, 1, "test", TestContext.Current.CancellationToken);
        }

        public FindingsDocument Document { get; }

        public Dictionary<string, double> TrueMeansMs { get; } = [];

        public void Dispose() => folder.Dispose();

        private double Capture(Study study, StudyLock held, SessionKey key, double fixedMs, double reportMs, int trials)
        {
            var device = new SimulatedDevice
            {
                FixedDelayMs = fixedMs,
                ReportIntervalMs = reportMs,
                ReportPhaseMs = reportMs * random.NextDouble(),
                SensorNoiseSdMs = 0.1,
                SittingOffsetMs = 0.1 * random.NextNormal(),
            };
            var bench = new SimulatedRigPortSource(device, Wrong with { Seed = random.NextUInt64() });
            var settings = RunRequest.DefaultSettings with { Response = "light", Seed = (uint)(random.NextUInt64() >> 33) + 1 };
            var run = new CaptureRun(study, held, new RunRequest { Key = key, Settings = settings, Trials = trials }, bench).Run(TestContext.Current.CancellationToken);
            Assert.True(run.Completed);
            return bench.Injected.Average(press => press.LatencyUs!.Value) / 1000;
        }
    }
}
