using System.Text.Json;

namespace Tarry.Tests.Commands;

public class PlanTests
{
    [Fact]
    public async Task Plan_OfAStudyWithoutData_SaysWhatIsAssumedAndWritesTheOrder()
    {
        using var folder = await Study();
        var said = await ProgramRun.Done("plan", folder["pads"], "--order", folder["order.csv"], "--sheet", folder["order.html"], "--port", "simulated");

        Assert.Contains("assumed, no published source", said);
        Assert.Contains("advised", said);
        Assert.Contains("What more presses cannot buy", said);
        var rows = await File.ReadAllLinesAsync(folder["order.csv"], TestContext.Current.CancellationToken);
        Assert.Equal("sitting,step,condition,is_reference,trials,seed,command", rows[0]);
        Assert.True(File.Exists(folder["order.html"]));

        // The command of the sheet is one that the program takes.
        var command = rows[1].Split(',')[6].Split(' ')[1..];
        command[^3] = "20";
        await ProgramRun.Done([.. command, "--interval-ms", "60..120"]);
    }

    [Fact]
    public async Task Plan_AsJson_HoldsTheGoalAndTheOrder()
    {
        using var folder = await Study();
        var plan = JsonDocument.Parse(await ProgramRun.Done("plan", folder["pads"], "--half-width-ms", "0.5", "--session-sd-ms", "0.2", "--trial-sd-ms", "2.6", "--json")).RootElement;

        Assert.Equal("half-width", plan.GetProperty("goal").GetProperty("kind").GetString());
        Assert.Equal("stated", plan.GetProperty("variances").GetProperty("session_sd_source").GetString());
        Assert.Equal(2 * plan.GetProperty("advised").GetProperty("sittings").GetInt32(), plan.GetProperty("order").GetArrayLength());
    }

    [Theory]
    [InlineData("--half-width-ms", "0.5", "--difference-ms", "1")]
    [InlineData("--power", "1.5", "--sittings", "3")]
    [InlineData("--session-sd-ms", "-1", "--sittings", "3")]
    [InlineData("--sittings", "0", "--trials", "3")]
    [InlineData("--difference-ms", "0,5", "--trials", "3")]
    public async Task Plan_OfWhatCannotBe_IsWrongUseWithARemedy(params string[] options)
    {
        using var folder = await Study();
        var run = await ProgramRun.Tarry(["plan", folder["pads"], .. options]);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains("what to do", run.Error);
    }

    [Fact]
    public async Task Plan_OfAStudyWithoutConditions_SaysWhatToDeclare()
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["empty"]);
        var run = await ProgramRun.Tarry("plan", folder["empty"]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("tarry condition", run.Error);
    }

    [Theory]
    [InlineData("--window-ms", "8,x")]
    [InlineData("--window-ms", "0")]
    [InlineData("--player-sd-ms", "0.01")]
    public async Task Analyse_ForWindowsThatCannotBe_IsWrongUse(string option, string value)
    {
        using var folder = await Study();
        var run = await ProgramRun.Tarry("analyse", folder["pads"], option, value);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(option, run.Error);
        Assert.DoesNotContain("fault", run.Error);
    }

    [Fact]
    public async Task Analyse_ForStatedWindows_OverridesTheStudyFile()
    {
        using var folder = await Study();
        await File.AppendAllTextAsync(Path.Combine(folder["pads"], "study.toml"), "\n[play]\nwindow_ms = 5\nplayer_sd_ms = [0, 3]\n", TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(folder["rows.csv"], "condition,sitting,latency_us\npad,monday,5000\npad,monday,5100\n", TestContext.Current.CancellationToken);
        await ProgramRun.Done("import", folder["pads"], folder["rows.csv"]);

        Assert.Equal("[5]", await Numbers(folder, "window_ms"));
        Assert.Equal("[0,3]", await Numbers(folder, "player_sd_ms"));
        Assert.Equal("[2,4]", await Numbers(folder, "window_ms", "--window-ms", "4,2"));
        Assert.Equal("[0,3]", await Numbers(folder, "player_sd_ms", "--window-ms", "4,2"));
    }

    private static async Task<string> Numbers(TemporaryFolder folder, string key, params string[] options)
    {
        var play = JsonDocument.Parse(await ProgramRun.Done(["analyse", folder["pads"], "--json", .. options])).RootElement.GetProperty("play");
        return $"[{string.Join(',', play.GetProperty(key).EnumerateArray().Select(number => number.GetDouble()))}]";
    }

    private static async Task<TemporaryFolder> Study()
    {
        var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["pads"], "--reference", "ref");
        await ProgramRun.Done("condition", folder["pads"], "ref", "--nominal-report-hz", "1000");
        await ProgramRun.Done("condition", folder["pads"], "pad", "--nominal-report-hz", "500");
        return folder;
    }
}
