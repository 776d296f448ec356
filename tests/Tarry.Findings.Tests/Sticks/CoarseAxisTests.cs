using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>An axis of few steps without noise says the same wrong position every time: no repetition shows it, and the interval must hold the truth all the same.</summary>
/// <remarks>Of 24 sticks of other sizes and offsets, each fault is held in 22 at least: rounding is allowed for at its worst, not by chance.</remarks>
public class CoarseAxisTests
{
    private const int Sticks = 24;
    private const int Fewest = 22;

    private static readonly Dictionary<string, (StickMeasure Measure, StickPart Part, double Truth, double Widest)[]> Truths = new()
    {
        ["offset"] = [(StickMeasure.CentreOffset, StickPart.X, 3, 0.4), (StickMeasure.CentreOffset, StickPart.Whole, 3, 0.6), (StickMeasure.CentreDrift, StickPart.X, 0, 0.7)],
        ["circle"] = [(StickMeasure.GainDifference, StickPart.Whole, 0, 0.2), (StickMeasure.NonOrthogonality, StickPart.Whole, 0, 0.1), (StickMeasure.RadialDeviation, StickPart.Whole, 0, 0.9), (StickMeasure.Hysteresis, StickPart.Y, 0, 0.12)],
        ["ellipse"] = [(StickMeasure.GainDifference, StickPart.Whole, 100 * ((1.03 / 0.97) - 1), 0.2), (StickMeasure.Squareness, StickPart.Whole, 0, 2)],
        ["skew"] = [(StickMeasure.NonOrthogonality, StickPart.Whole, 3, 0.1)],
        ["hysteresis"] = [(StickMeasure.Hysteresis, StickPart.X, 2, 0.15), (StickMeasure.Hysteresis, StickPart.Y, 2, 0.15)],
        ["square"] = [(StickMeasure.Squareness, StickPart.Whole, 100, 2)],
        ["dead-zone"] = [(StickMeasure.InnerDeadZone, StickPart.X, 6, 0.3)],
        ["unknown-dead-zone"] = [(StickMeasure.InnerDeadZone, StickPart.X, 6, 0.3)],
        ["held-dead-zone"] = [(StickMeasure.InnerDeadZone, StickPart.X, 4, 1.2)],
        ["saturation"] = [(StickMeasure.OuterSaturation, StickPart.X, 85, 0.3)],
        ["rotation"] = [(StickMeasure.AngularRotation, StickPart.Whole, 1.5, 0.3)],
    };

    public static MatrixTheoryData<string, int> Faults => new(Truths.Keys, [256, 1_024]);

    [Theory]
    [MemberData(nameof(Faults))]
    public void Estimates_OfAnAxisOfFewSteps_CoverTheFault(string fault, int steps)
    {
        var findings = new StickFinding[Sticks];
        Parallel.For(0, Sticks, index => findings[index] = StickFindings.Of([], Record(fault, steps, index))!.Conditions[0]);
        Assert.All(Truths[fault], entry =>
        {
            var estimates = findings.Select(finding => finding.Estimate(entry.Measure, entry.Part)).ToList();
            Assert.All(estimates, Assert.NotNull);
            Assert.InRange(estimates.Count(estimate => estimate!.Low <= entry.Truth && entry.Truth <= estimate.High), Fewest, Sticks);
            Assert.InRange(estimates.Average(estimate => (estimate!.High - estimate.Low) / 2), 0, entry.Widest);
            Assert.DoesNotContain(findings, finding => entry.Truth == 0 && finding.Faults.Any(told => told.Measure == entry.Measure && told.Part == entry.Part));
        });
    }

    private static StickSession[] Record(string fault, int steps, int index)
    {
        var stick = new FaultyStick { RateHz = 250, Steps = steps, Noise = 0, GateRadius = 88 + (0.21 * index) };
        var seed = (ulong)index + 1;
        var angle = index * Math.PI / 40;
        return fault switch
        {
            "offset" => With((stick with { OffsetX = 3 }).Rest(seed, seconds: 70)),
            "circle" => [(stick with { OffsetX = Math.Sin(angle) }).Rim(seed)],
            "ellipse" => [(stick with { GainX = 1.03, GainY = 0.97 }).Rim(seed)],
            "skew" => [(stick with { SkewDegrees = 3 }).Rim(seed)],
            "hysteresis" => [(stick with { Hysteresis = 2 }).Rim(seed)],
            "square" => [(stick with { SquareMapping = true }).Rim(seed)],
            "dead-zone" => [(stick with { DeadZone = 6, OffsetX = Math.Sin(angle) }).Sweeps(seed)],
            "unknown-dead-zone" => [(stick with { DeadZone = 6 }).Sweeps(seed, known: false)],
            "held-dead-zone" => With((stick with { DeadZone = 4, OffsetX = Math.Sin(angle) }).Stairs(seed)),
            "saturation" => [(stick with { Saturation = 85, OffsetX = Math.Sin(angle) }).Sweeps(seed)],
            "rotation" => With((stick with { RotationDegrees = 1.5 }).Stops(seed)),
            _ => throw new ArgumentOutOfRangeException(nameof(fault), fault, "No such fault."),
        };

        // Turns show how coarse the axes are.
        StickSession[] With(StickSession session) => [session, stick.Rim(seed)];
    }
}
