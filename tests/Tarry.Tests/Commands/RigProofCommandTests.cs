using System.Text.Json;

namespace Tarry.Tests.Commands;

public class RigProofCommandTests
{
    [Fact]
    public async Task Proof_OfTheSimulatedRig_PassesWithATable()
    {
        var said = await ProgramRun.Done("rig", "proof", "--port", "simulated", "--response", "light");
        Assert.Contains("The rig has proved itself.", said, StringComparison.Ordinal);
        Assert.DoesNotContain("fails", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Proof_AtAThresholdTooNearTheDark_IsExitCodeOneWithAReason()
    {
        var run = await ProgramRun.Tarry("rig", "proof", "--port", "simulated", "--response", "light", "--light-threshold", "45");
        Assert.Equal(Output.ExitCode.DataSaysNo, run.ExitCode);
        Assert.Contains("what to do: Set --light-threshold 125", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Proof_WithoutARig_IsExitCodeThree() =>
        Assert.Equal(Output.ExitCode.RigOrDiskFailed, (await ProgramRun.Tarry("rig", "proof", "--port", "/nowhere/port")).ExitCode);

    [Fact]
    public async Task Calibrate_ThenRun_IsReferredTo()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study, "--reference", "pad");
        await ProgramRun.Done("condition", study, "pad");
        using var answer = JsonDocument.Parse(await ProgramRun.Done("rig", "calibrate", study, "--port", "simulated", "--response", "light", "--json"));
        Assert.True(answer.RootElement.GetProperty("passed").GetBoolean());
        Assert.Equal("0001", answer.RootElement.GetProperty("stored").GetString());
        await ProgramRun.Done("run", study, "--condition", "pad", "--sitting", "a", "--port", "simulated", "--response", "light", "--trials", "100");
        await ProgramRun.Done("run", study, "--condition", "pad", "--sitting", "b", "--port", "simulated", "--response", "light", "--trials", "100", "--light-threshold", "100");
        var opened = Studies.Study.Open(study);
        Assert.Equal("0001", opened.Read(new Studies.Sessions.SessionKey("a", "pad")).Record.Calibration);
        Assert.Null(opened.Read(new Studies.Sessions.SessionKey("b", "pad")).Record.Calibration);
        Assert.Contains("limits of its class", await ProgramRun.Done("analyse", study), StringComparison.Ordinal);
        await ProgramRun.Done("check", study);
    }

    [Fact]
    public async Task Calibrate_OfARigThatFails_StoresNothing()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study, "--reference", "pad");
        var run = await ProgramRun.Tarry("rig", "calibrate", study, "--port", "simulated", "--response", "light", "--light-threshold", "45");
        Assert.Equal(Output.ExitCode.DataSaysNo, run.ExitCode);
        Assert.Empty(Studies.Study.Open(study).Calibrations);
    }

    [Fact]
    public async Task Proof_AgainstAStudyWithoutCalibration_IsWrongUse()
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["study"], "--reference", "pad");
        Assert.Equal(Output.ExitCode.WrongUse, (await ProgramRun.Tarry("rig", "proof", "--port", "simulated", "--study", folder["study"])).ExitCode);
    }
}
