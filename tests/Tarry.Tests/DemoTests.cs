using System.Text.Json;
using Tarry.Demo;
using Tarry.Rig.Sticks;
using Tarry.Studies;
using Tarry.Studies.Sticks;

namespace Tarry.Tests;

public class DemoTests(DemoStudyFixture demo) : IClassFixture<DemoStudyFixture>
{
    [Fact]
    public async Task Demo_OfTheSameSeed_GivesTheSameFindingsByteForByte()
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("demo", "--out", folder["again"]);
        Assert.Equal(
            await File.ReadAllBytesAsync(Path.Combine(demo.Study, "report", "findings.json"), TestContext.Current.CancellationToken),
            await File.ReadAllBytesAsync(Path.Combine(folder["again"], "report", "findings.json"), TestContext.Current.CancellationToken));
        var other = folder["other"];
        await ProgramRun.Done("demo", "--out", other, "--seed", "2");
        Assert.NotEqual(
            await File.ReadAllTextAsync(Path.Combine(demo.Study, "report", "findings.json"), TestContext.Current.CancellationToken),
            await File.ReadAllTextAsync(Path.Combine(other, "report", "findings.json"), TestContext.Current.CancellationToken));
    }

    [Fact]
    public void Demo_RecordsEveryProcedureOfItsSticksWellEnough()
    {
        var study = Study.Open(demo.Study);
        var sessions = study.StickKeys.Select(study.ReadStick).ToList();
        Assert.Equal(DemoSticks.Count * StickProcedures.Names.Count, sessions.Count);
        Assert.All(sessions, session => Assert.Empty(StickAcceptance.Lacks(session)));
        Assert.Contains(sessions, session => session.Record.Key.Condition == "ferrule-stick-remapper" && session.Setup.X.Minimum == -32_768);
    }

    [Fact]
    public void Demo_EndsWithTheHeadlineTableAndTheReport()
    {
        Assert.All(DemoScenario.Conditions, condition => Assert.Contains(condition.Entry.Id, demo.Terminal));
        Assert.Contains(Path.Combine(demo.Study, "report", "report.html"), demo.Terminal);
        Assert.True(File.Exists(Path.Combine(demo.Study, "report", "report.html")));
    }

    [Fact]
    public async Task Report_WithFigures_WritesThemAllAndTheReadmeShowsTheStanding()
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("report", demo.Study, "--out", folder.Path, "--figures");
        Assert.True(new FileInfo(folder["report.html"]).Length < 1_000_000, "A report that goes by mail stays under 1 MB.");
        string[] expected =
        [
            .. from figure in new[] { "standing", "ridge", "ladder", "sessions", "layer-cost", "fold", "device-only", "run-chart", "play", "stick-rose", "stick-rest", "stick-return", "stick-spectrum", "stick-stops", "stick-linearity", "stick-reshaping" }
               from theme in new[] { "light", "dark", "light-transparent", "dark-transparent" }
               from ending in new[] { ".svg", "-1920x1080.png", "-3840x2160.png" }
               select figure + "-" + theme + ending,
        ];
        Assert.Equal(expected.Order(StringComparer.Ordinal), Directory.GetFiles(folder["figures"]).Select(Path.GetFileName).Order(StringComparer.Ordinal));

        var shown = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", "figures", "standing.svg"), TestContext.Current.CancellationToken);
        var drawn = await File.ReadAllTextAsync(Path.Combine(folder["figures"], "standing-light.svg"), TestContext.Current.CancellationToken);
        Assert.True(drawn == shown, "docs/figures/standing.svg is not what the program draws of the demonstration; docs/figures/README.md tells how to draw it again.");
    }

    [Fact]
    public async Task Analyse_OfTheDemo_PrintsTheFindingsBesideTheReport() => Assert.Equal(
        await File.ReadAllTextAsync(Path.Combine(demo.Study, "report", "findings.json"), TestContext.Current.CancellationToken),
        await ProgramRun.Done("analyse", demo.Study, "--json"));

    [Fact]
    public async Task Check_OfTheDemo_FindsItWhole() => Assert.Contains("The study is whole.", await ProgramRun.Done("check", demo.Study));

    [Fact]
    public void Counts_OfTheDemo_AddUpEverywhere()
    {
        var all = demo.Findings.GetProperty("counts");
        var conditions = demo.Findings.GetProperty("conditions").EnumerateArray().ToList();
        foreach (var key in new[] { "captured", "used", "missed", "early", "refused", "excluded" })
        {
            Assert.Equal(all.GetProperty(key).GetInt64(), conditions.Sum(condition => condition.GetProperty("counts").GetProperty(key).GetInt64()));
        }

        Assert.All(conditions.Select(condition => condition.GetProperty("counts")).Append(all), AssertAddsUp);
        Assert.Equal(DemoScenario.TrialsPerSession * DemoScenario.Sittings.Count * DemoScenario.Conditions.Count, all.GetProperty("captured").GetInt64());
    }

    /// <summary>What the scenario holds: waits are uniform, so a mean is the fixed delays plus half of every period.</summary>
    [Theory]
    [InlineData("quill-usb", 1.2)]
    [InlineData("ferrule-usb", 2.05 + 0.5)]
    [InlineData("ferrule-usb-overlay", 2.05 + 0.5 + 0.6)]
    [InlineData("ferrule-usb-remapper", 2.05 + 0.5)]
    [InlineData("tamarind-usb", 2.95 + 3.5)]
    public void Relative_OfTheWires_HoldsTheTruth(string id, double truthMs)
    {
        var relative = Condition(id).GetProperty("relative_ms");
        Assert.InRange(truthMs, relative.GetProperty("low").GetDouble(), relative.GetProperty("high").GetDouble());
    }

    [Theory]
    [InlineData("ferrule-usb-overlay", "ferrule-usb", "slower")]
    [InlineData("ferrule-usb-remapper", "ferrule-usb", "no-difference-that-matters")]
    public void Verdict_OfALayer_IsWhatItCosts(string layered, string bare, string verdict)
    {
        var pair = demo.Findings.GetProperty("comparisons").EnumerateArray()
            .Single(pair => new[] { layered, bare }.Order().SequenceEqual(new[] { pair.GetProperty("a").GetString()!, pair.GetProperty("b").GetString()! }.Order()));
        var found = pair.GetProperty("verdict").GetString()!;
        var reversed = pair.GetProperty("a").GetString() == bare;
        Assert.Equal(verdict, reversed && found is "faster" ? "slower" : found);
    }

    [Theory]
    [InlineData("quill-usb", "rig-rebooted")]
    [InlineData("sedge-dongle", "drift")]
    [InlineData("tamarind-usb-even-presses", "press-lattice")]
    [InlineData("tamarind-radio", "missed-share")]
    [InlineData("tamarind-radio", "loss-favours")]
    public void Caution_OfWhatTheScenarioDoes_IsThere(string id, string kind) =>
        Assert.Contains(kind, Condition(id).GetProperty("cautions").EnumerateArray().Select(caution => caution.GetProperty("kind").GetString()));

    private static void AssertAddsUp(JsonElement counts) => Assert.Equal(
        counts.GetProperty("captured").GetInt64(),
        new[] { "used", "missed", "early", "refused", "excluded" }.Sum(key => counts.GetProperty(key).GetInt64()));

    private JsonElement Condition(string id) =>
        demo.Findings.GetProperty("conditions").EnumerateArray().Single(condition => condition.GetProperty("id").GetString() == id);
}
