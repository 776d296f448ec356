using Tarry.Output;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Tests;

public class ActuationOptionsTests
{
    [Theory]
    [InlineData("--actuate axis", "--axis-low", "5")]
    [InlineData("--actuate axis", "--actuate", "matrix", "--axis-ramp-ms", "5")]
    [InlineData("Give an axis two different levels", "--actuate", "axis", "--axis-low", "65535")]
    [InlineData("ramp", "--actuate", "axis", "--axis-ramp-ms", "5")]
    [InlineData("pedal", "--actuate", "pedal")]
    public async Task Run_OfAnActuationThatCannotBe_SaysWhat(string said, params string[] options)
    {
        using var folder = new TemporaryFolder();
        var run = await Simulated(folder, options);
        Assert.Equal(ExitCode.WrongUse, run.ExitCode);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("contact", "--actuate", "contact")]
    [InlineData("matrix", "--actuate", "matrix")]
    [InlineData("reference", "--actuate", "reference")]
    public async Task Run_OfAContact_IsRecordedAsAsked(string? kind, params string[] options)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(ExitCode.Done, (await Simulated(folder, options)).ExitCode);
        Assert.Equal(kind is null or "contact" ? null : new Actuation(kind), Recorded(folder));
    }

    [Fact]
    public async Task Run_OfAnAxis_IsRecordedWithItsLevels()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(ExitCode.Done, (await Simulated(folder, "--actuate", "axis", "--axis-drive", "dac", "--axis-low", "1000", "--axis-high", "60000", "--axis-threshold", "20000", "--axis-ramp-ms", "2.5")).ExitCode);
        Assert.Equal(new Actuation("axis", new AxisActuation("dac", 1000, 60_000, 20_000, 2500)), Recorded(folder));
    }

    private static async Task<ProgramRun> Simulated(TemporaryFolder folder, params string[] options)
    {
        await ProgramRun.Done("new", folder["study"], "--reference", "pad");
        await ProgramRun.Done("condition", folder["study"], "pad");
        return await ProgramRun.Tarry(["run", folder["study"], "--condition", "pad", "--sitting", "bench", "--port", "simulated", "--trials", "5", .. options]);
    }

    private static Actuation? Recorded(TemporaryFolder folder) =>
        Study.Open(folder["study"]).Read(new SessionKey("bench", "pad")).Record.Run!.Actuation;
}
