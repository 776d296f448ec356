using System.Text.Json;

namespace Tarry.Tests;

/// <summary>A retest on the simulated bench: what the truth changes is told, and what it does not is not.</summary>
public class CompareTests
{
    [Fact]
    public async Task Retest_InWhichOnlyTheFirmwareDiffers_IsToldWithItsInterval()
    {
        using var folder = new TemporaryFolder();
        await Study(folder["before"], firmware: "1.7", reportHz: 125, seed: 100);
        await Study(folder["after"], firmware: "1.8", reportHz: 250, seed: 200);
        var contrast = await Compare(folder, "after:pad", "before:pad");
        Assert.Equal("faster", contrast.GetProperty("verdict").GetString());

        // A wait for the next slot is uniform, so its mean falls from 4 to 2 ms.
        var difference = contrast.GetProperty("difference_ms");
        Assert.InRange(-2, difference.GetProperty("low").GetDouble(), difference.GetProperty("high").GetDouble());
        Assert.Contains("device_firmware", contrast.GetProperty("factors_that_differ").EnumerateArray().Select(factor => factor.GetProperty("factor").GetString()));
    }

    [Fact]
    public async Task Retest_InWhichNothingChanged_IsNotTold()
    {
        using var folder = new TemporaryFolder();
        await Study(folder["before"], firmware: "1.7", reportHz: 500, seed: 300);
        await Study(folder["after"], firmware: "1.7", reportHz: 500, seed: 400);
        var contrast = await Compare(folder, "after:pad", "before:pad");
        Assert.Equal("no-difference-that-matters", contrast.GetProperty("verdict").GetString());
        Assert.Empty(contrast.GetProperty("factors_that_differ").EnumerateArray());
    }

    [Fact]
    public async Task Retest_InWhichOnlyTheReferenceDiffers_TellsNoChange()
    {
        using var folder = new TemporaryFolder();
        await Study(folder["before"], firmware: "1.7", reportHz: 500, seed: 500);
        await Study(folder["after"], firmware: "1.7", reportHz: 500, seed: 600, referenceUnit: "B", referenceHz: 125);
        var run = await ProgramRun.Tarry("compare", folder["after"] + ":pad", folder["before"] + ":pad");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains("unit B against A", run.Error);
        Assert.Contains("what to do", run.Error);
    }

    [Theory]
    [InlineData("a:pad", "b")]
    [InlineData("a:", "b:pad")]
    public async Task Compare_OfWhatIsNoConditionOfAStudy_IsWrongUse(string first, string second) =>
        Assert.Equal(2, (await ProgramRun.Tarry("compare", first, second)).ExitCode);

    private static async Task<JsonElement> Compare(TemporaryFolder folder, string a, string b) =>
        JsonDocument.Parse(await ProgramRun.Done("compare", folder[a], folder[b], "--json")).RootElement;

    private static async Task Study(string study, string firmware, int reportHz, int seed, string referenceUnit = "A", int referenceHz = 1000)
    {
        await ProgramRun.Done("new", study, "--reference", "board", "--title", Path.GetFileName(study));
        await ProgramRun.Done("condition", study, "board", "--device", "Bench board", "--unit", referenceUnit, "--nominal-report-hz", $"{referenceHz}");
        await ProgramRun.Done("condition", study, "pad", "--device", "Quill 2", "--unit", "0041", "--device-firmware", firmware, "--nominal-report-hz", $"{reportHz}");
        foreach (var sitting in new[] { "one", "two", "three" })
        {
            foreach (var condition in new[] { "board", "pad" })
            {
                await ProgramRun.Done("run", study, "--condition", condition, "--sitting", sitting, "--port", "simulated", "--trials", "1000", "--seed", $"{seed++}");
            }
        }
    }
}
