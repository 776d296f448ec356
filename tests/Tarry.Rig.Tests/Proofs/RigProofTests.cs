using Tarry.Rig.Proofs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies.Calibrations;

namespace Tarry.Rig.Tests.Proofs;

public class RigProofTests
{
    private static readonly SimulatedDevice Wire = new();
    private static readonly SimulatedRigOptions Sound = new() { ThresholdDelayUs = 20, LightWhenDark = 40, LightWhenBright = 210, RateErrorPpm = 3000 };
    private static readonly ProofRequest ByLight = new() { Response = "light" };

    [Fact]
    public void Run_SoundRigByLight_PassesAndFindsWhatWasInjected()
    {
        var result = Prove(Wire, Sound, ByLight);
        Assert.True(result.Passed, string.Join('\n', result.Points));
        var found = result.Calibration!;

        // 20 us of threshold delay at 62.5 ns ticks; the true clock is 3,000 ppm fast.
        Assert.InRange(found.OwnDelayUs, 20 - (2 * found.OwnDelayStandardUncertaintyUs), 20 + (2 * found.OwnDelayStandardUncertaintyUs));
        Assert.InRange(found.OwnDelayStandardUncertaintyUs, 0.0625 / Math.Sqrt(3), 0.1);
        Assert.Equal(new ThresholdRange(41, 210), found.ThresholdsThatAnswer);
        Assert.InRange(found.Clock!.RateErrorPpm, 3000 - 20, 3000 + 20);
    }

    [Fact]
    public void Run_SoundRigByWire_NeedsNoThreshold()
    {
        var result = Prove(Wire, Sound, new ProofRequest());
        Assert.True(result.Passed, string.Join('\n', result.Points));
        Assert.Null(Point(result, "light level and threshold").Passed);
        Assert.Null(result.Calibration!.LightThreshold);
    }

    [Theory]
    [InlineData("own delay")]
    [InlineData("jitter")]
    [InlineData("loop-back")]
    [InlineData("single edges")]
    [InlineData("light level and threshold")]
    [InlineData("clock")]
    [InlineData("bad frames")]
    [InlineData("restarts")]
    public void Run_OneFault_FailsItsPointWithAReason(string name)
    {
        var (device, options, request) = name switch
        {
            "own delay" => (Wire, Sound with { ThresholdDelayUs = 140 }, ByLight),
            "jitter" => (Wire with { FixedDelayMs = 0.04, SensorNoiseSdMs = 0.012 }, Sound, ByLight),
            "loop-back" => (Wire with { MissProbability = 0.002 }, Sound, new ProofRequest()),
            "single edges" => (Wire with { BounceProbability = 0.05 }, Sound, ByLight),
            "light level and threshold" => (Wire, Sound with { LightWhenDark = 124 }, ByLight),
            "clock" => (Wire, Sound with { RateErrorPpm = 9000 }, ByLight),
            "bad frames" => (Wire, Sound with { NoiseToHost = 0.0005 }, ByLight),
            _ => (Wire, Sound with { RestartsAtTrials = [700] }, new ProofRequest()),
        };
        var result = Prove(device, options, request);
        var failed = Assert.Single(result.Points, point => point.Passed == false);
        Assert.Equal(name, failed.Name);
        Assert.NotNull(failed.Remedy);
    }

    [Fact]
    public void Run_NothingWired_FailsAndCalibratesNothing()
    {
        var result = Prove(Wire with { MissProbability = 1 }, Sound, new ProofRequest { Trials = 1000 });
        Assert.False(result.Passed);
        Assert.Null(result.Calibration);
        Assert.Contains("0 of 1000", Point(result, "loop-back").Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_NoThresholdAnswers_SaysSo()
    {
        var result = Prove(Wire, Sound with { LightWhenDark = 0, LightWhenBright = 0 }, ByLight with { Trials = 1000 });
        Assert.Contains("no threshold answers", Point(result, "light level and threshold").Found, StringComparison.Ordinal);
        Assert.False(result.Passed);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(2, false)]
    public void Run_AfterTheDelayHasMoved_DoesNotAgreeWithTheCalibration(double movedUs, bool agrees)
    {
        var earlier = Prove(Wire, Sound, ByLight).Calibration;
        var later = new RigProof(new SimulatedRigPortSource(Wire, Sound with { Seed = 2, ThresholdDelayUs = 20 + movedUs }), ByLight, earlier).Run(TestContext.Current.CancellationToken);
        Assert.Equal(agrees, Point(later, "as calibrated").Passed);
    }

    [Fact]
    public void Run_ByEcho_IsRefused() =>
        Assert.Throws<Rig.Runs.RunSettingsException>(() => Prove(Wire, Sound, new ProofRequest { Response = "echo" }));

    [Fact]
    public void Run_NoRig_IsARigError() =>
        Assert.Throws<RigException>(() => Prove(Wire, Sound with { NoiseToRig = 1 }, ByLight));

    private static ProofResult Prove(SimulatedDevice device, SimulatedRigOptions options, ProofRequest request) =>
        new RigProof(new SimulatedRigPortSource(device, options), request).Run(TestContext.Current.CancellationToken);

    private static ProofPoint Point(ProofResult result, string name) => Assert.Single(result.Points, point => point.Name == name);
}
