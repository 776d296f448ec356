using System.Globalization;
using System.Text;
using System.Text.Json;
using Tarry.Metrology;

namespace Tarry.Tests.DataPackage;

/// <summary>A study of sticks alone, with known truth, from its tables to its package and back.</summary>
public sealed class StickPackageTests : IAsyncLifetime
{
    private const double Half = 2_047.5;
    private readonly TemporaryFolder folder = new();

    public async ValueTask InitializeAsync()
    {
        await ProgramRun.Done("new", folder["study"], "--title", "Sticks alone");
        await ProgramRun.Done("condition", folder["study"], "quill", "--device", "Quill, second", "--control", "stick");
        var random = SeededGenerator.ForPart(5, 0);
        foreach (var sitting in new[] { "monday", "tuesday", "wednesday" })
        {
            await Import("study", folder.Write("rest.csv", Rest(random)), "rest", sitting);
            await Import("study", folder.Write("rim.csv", Rim(random)), "rim-sweep", sitting);
        }

        await File.AppendAllTextAsync(Path.Combine(folder["study"], "study.toml"), "\n[[exclude]]\nsession = \"wednesday.quill.rest\"\nreason = \"the table shook, twice\"\n");
        await ProgramRun.Done("export", folder["study"], "--format", "datapackage", "--out", folder["package"], "--licence", "CC0-1.0");
    }

    public ValueTask DisposeAsync()
    {
        folder.Dispose();
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task RecheckScripts_OfKnownTruth_FindItAndWhatIsPublished()
    {
        var r = await OtherProgram.Done(Requirement.Program("Rscript", "r-base-core"), folder["package"], "recheck-sticks.R");
        Requirement.Needs(StickRecheck.HasSciPy, "SciPy (Debian package python3-scipy)");
        var python = await OtherProgram.Done(StickRecheck.Python, folder["package"], "recheck-sticks.py");
        var findings = StickRecheck.Findings(folder["package"]);
        foreach (var printed in new[] { r, python })
        {
            var found = StickRecheck.Values(printed);
            Assert.Equal(10, found.Count);
            StickRecheck.AssertPublished(found, findings);
            double Of(string key) => found[("quill", key)];

            // Two sittings of 30,000 positions: noise to 2 % (ten times its standard error), means to 0.01 counts and half a rounding.
            Assert.Equal(100 * 40 / Half, Of("centre_offset_x_percent"), 100 * 0.51 / Half);
            Assert.Equal(100 * -20 / Half, Of("centre_offset_y_percent"), 100 * 0.51 / Half);
            Assert.Equal(100 * 2.3 / Half, Of("rest_noise_x_percent"), 0.02 * 100 * 2.3 / Half);
            Assert.Equal(100 * 1.2 / Half, Of("rest_noise_y_percent"), 0.02 * 100 * 1.2 / Half);
            Assert.Equal(4_096, Of("distinct_steps_x_count"), 1e-9);
            // Seven turns of 5,000 positions with noise of 2 counts, three sittings: radius and centre to 0.1 counts.
            Assert.Equal(100 * 1_700 / Half, Of("circle_radius_percent"), 100 * 0.1 / Half);
            Assert.Equal(100 * 2.5 / Half, Of("circle_centre_x_percent"), 100 * 0.1 / Half);
            // Three lobes of one per cent: 34 counts from peak to valley, a little less where the broad peak is missed.
            Assert.InRange(Of("radial_deviation_percent"), 0.97 * 100 * 34 / Half, 1.01 * 100 * 34 / Half);
        }
    }

    [Fact]
    public async Task RecheckScripts_OfChangedPositions_FindAnotherValue()
    {
        var name = folder["package/sticks/monday.quill.rest.csv"];
        var table = await File.ReadAllLinesAsync(name, TestContext.Current.CancellationToken);
        await File.WriteAllLinesAsync(name, table.Select((line, index) => index == 0 ? line : Moved(line)), TestContext.Current.CancellationToken);
        var found = StickRecheck.Values(await OtherProgram.Done(Requirement.Program("Rscript", "r-base-core"), folder["package"], "recheck-sticks.R"));
        // One of two sittings moved by 10 counts: their mean by 5.
        Assert.Equal(100 * 45 / Half, found[("quill", "centre_offset_x_percent")], 100 * 0.51 / Half);

        static string Moved(string line)
        {
            var cells = line.Split(',');
            return $"{cells[0]},{int.Parse(cells[1], CultureInfo.InvariantCulture) + 10},{cells[2]}";
        }
    }

    [Fact]
    public async Task Package_ReadByAGeneralReader_IsValidAndNamesWhatIsSetAside()
    {
        var node = Requirement.Program("node", "nodejs");
        var tests = Path.Combine(Repository.Root, "tests", "Tarry.Tests");
        Requirement.Needs(Directory.Exists(Path.Combine(tests, "node_modules", "datapackage")), "the npm package datapackage: run npm ci in tests/Tarry.Tests");
        var script = Path.Combine(AppContext.BaseDirectory, "DataPackage", "read-package.js");
        var read = await OtherProgram.Done(node, folder.Path, script, tests, folder["package/datapackage.json"]);
        Assert.Contains("trials 0\nheadline 0\nstick-recordings 6\nstick-findings ", read, StringComparison.Ordinal);
        Assert.Contains("sticks/wednesday.quill.rest.csv 30000\n", read, StringComparison.Ordinal);

        var recordings = await File.ReadAllTextAsync(folder["package/stick-recordings.csv"], TestContext.Current.CancellationToken);
        Assert.Contains(",1,\"the table shook, twice\",\"Quill, second\",stick\n", recordings, StringComparison.Ordinal);
        Assert.Equal(5, recordings.Split('\n').Count(line => line.EndsWith(",0,,\"Quill, second\",stick", StringComparison.Ordinal)));
        var readme = await File.ReadAllTextAsync(folder["package/README.md"], TestContext.Current.CancellationToken);
        Assert.DoesNotContain("Input latency", readme, StringComparison.Ordinal);
        Assert.Contains("Conditions with recordings of a stick: 1. Recordings: 6.", readme, StringComparison.Ordinal);

        // The same reader refuses a position beyond the range that is stated.
        var table = await File.ReadAllTextAsync(folder["package/sticks/monday.quill.rest.csv"], TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(folder["package/sticks/monday.quill.rest.csv"], table + "60000000,4096,0\n", TestContext.Current.CancellationToken);
        await Assert.ThrowsAnyAsync<Exception>(() => OtherProgram.Done(node, folder.Path, script, tests, folder["package/datapackage.json"]));
    }

    [Fact]
    public async Task AnalysisAndReport_OfARecordingThatIsSetAside_NameItAndItsReason()
    {
        Assert.Contains("set aside: wednesday.quill.rest: the table shook, twice\n", await ProgramRun.Done("analyse", folder["study"]), StringComparison.Ordinal);
        using var findings = JsonDocument.Parse(await ProgramRun.Done("analyse", folder["study"], "--json"));
        var aside = Assert.Single(findings.RootElement.GetProperty("set_aside").EnumerateArray());
        Assert.Equal(("wednesday.quill.rest", "the table shook, twice"), (aside.GetProperty("session").GetString(), aside.GetProperty("reason").GetString()));
        await ProgramRun.Done("report", folder["study"], "--out", folder["report"]);
        var report = await File.ReadAllTextAsync(folder["report/report.html"], TestContext.Current.CancellationToken);
        Assert.Contains("wednesday.quill.rest: the whole recording set aside: the table shook, twice.", report, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing was set aside.", report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Table_OfFindings_HasEveryMeasureOfFindingsJson()
    {
        var lines = (await File.ReadAllLinesAsync(folder["package/stick-findings.csv"], TestContext.Current.CancellationToken)).Skip(1).Select(line => line.Split(',')).ToList();
        var measures = StickRecheck.Findings(folder["package"]).GetProperty("conditions")[0].GetProperty("measures").EnumerateObject().ToList();
        Assert.Equal(measures.Select(measure => measure.Name), lines.Select(cells => cells[1]));
        Assert.All(measures.Zip(lines), pair =>
        {
            var (outcome, cells) = (pair.First.Value, pair.Second);
            Assert.Equal(pair.First.Name, cells[3] == "whole" ? $"{cells[2]}_{cells[4]}" : $"{cells[2]}_{cells[3]}_{cells[4]}");
            if (outcome.TryGetProperty("refused", out var refused))
            {
                Assert.Equal(("", refused.GetProperty("reason").GetString()), (cells[5], cells[13]));
                return;
            }

            foreach (var (name, cell) in new[] { ("value", 5), ("low", 6), ("high", 7), ("level", 8), ("replicates", 10), ("sessions", 12) })
            {
                Assert.Equal(outcome.GetProperty(name).GetDouble(), double.Parse(cells[cell], CultureInfo.InvariantCulture));
            }

            Assert.Equal((outcome.GetProperty("method").GetString(), outcome.GetProperty("replicates_of").GetString(), ""), (cells[9], cells[11], cells[13]));
        });
    }

    [Fact]
    public async Task Tables_ImportedAgain_SayTheSame()
    {
        var exported = await ProgramRun.Done("export", folder["study"], "--out", folder["tables"]);
        Assert.Contains(Path.Combine(folder["tables"], "stick-recordings.csv"), exported, StringComparison.Ordinal);
        await ProgramRun.Done("new", folder["again"], "--title", "Sticks alone");
        foreach (var line in (await File.ReadAllLinesAsync(folder["tables/stick-recordings.csv"], TestContext.Current.CancellationToken)).Skip(1))
        {
            // session, condition, sitting, procedure, ...: as docs/formats/stick.md has the options.
            var cells = line.Split(',');
            if (cells[0] != "wednesday.quill.rest")
            {
                await ProgramRun.Done(
                    "import", folder["again"], folder[$"tables/sticks/{cells[0]}.csv"], "--kind", "stick", "--condition", cells[1], "--sitting", cells[2], "--procedure", cells[3],
                    "--x-range", $"{cells[8]}..{cells[9]}", "--y-range", $"{cells[11]}..{cells[12]}", "--step", cells[10]);
            }
        }

        var again = JsonDocument.Parse(await ProgramRun.Done("analyse", folder["again"], "--json")).RootElement.GetProperty("sticks");
        Assert.Equal(JsonSerializer.Serialize(StickRecheck.Findings(folder["package"])), JsonSerializer.Serialize(again));
        Assert.True(File.Exists(folder["tables/sticks/wednesday.quill.rest.json"]));
    }

    [Fact]
    public async Task Export_WithoutAFolder_SaysThatPositionsWantOne()
    {
        var run = await ProgramRun.Tarry("export", folder["study"]);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("6 sessions of a stick", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_Correction_TakesThePlaceOfTheSealedOneInStudyAndPackage()
    {
        string[] import = ["import", folder["study"], folder.Write("rest.csv", Rest(SeededGenerator.ForPart(6, 0))), "--kind", "stick", "--condition", "quill", "--sitting", "monday", "--procedure", "rest", "--x-range", "0..4000"];
        Assert.Contains("--correction", (await ProgramRun.Tarry(import)).Error, StringComparison.Ordinal);
        await ProgramRun.Done([.. import, "--correction", "the range was stated wrong"]);
        await ProgramRun.Done("export", folder["study"], "--out", folder["corrected"]);
        Assert.Contains("monday.quill.rest,quill,monday,rest,csv,30000,59.998,500,0,4000,", await File.ReadAllTextAsync(folder["corrected/stick-recordings.csv"], TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Contains("the range was stated wrong", await File.ReadAllTextAsync(folder["corrected/sticks/monday.quill.rest.json"], TestContext.Current.CancellationToken), StringComparison.Ordinal);

        var none = await ProgramRun.Tarry([.. import.Select(word => word == "monday" ? "sunday" : word), "--correction", "the range was stated wrong"]);
        Assert.NotEqual(0, none.ExitCode);
        Assert.Contains("no sunday.quill.rest to correct", none.Error, StringComparison.Ordinal);
    }

    private Task<string> Import(string study, string table, string procedure, string sitting) => ProgramRun.Done(
        "import", folder[study], table, "--kind", "stick", "--procedure", procedure, "--x-range", "0..4095", "--condition", "quill", "--sitting", sitting);

    // 500 positions a second for a minute, 40 counts right and 20 below the middle, normal noise of 2.3 and 1.2 counts, drift in x.
    private static string Rest(SeededGenerator random)
    {
        var text = new StringBuilder("time_ms,x,y\n");
        for (var i = 0; i < 30_000; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{2 * i},{Math.Round(Half + 40 + (0.0005 * (i - 15_000)) + (2.3 * random.NextNormal()))},{Math.Round(Half - 20 + (1.2 * random.NextNormal()))}\n");
        }

        return text.ToString();
    }

    // Seven turns one way along three lobes of one per cent about a circle of 1,700 counts.
    private static string Rim(SeededGenerator random)
    {
        var text = new StringBuilder("time_ms,x,y\n");
        for (var i = 0; i < 35_500; i++)
        {
            var angle = (2 * Math.PI * i / 5_000) + 0.3;
            var radius = 1_700 * (1 + (0.01 * Math.Cos(3 * angle)));
            text.Append(CultureInfo.InvariantCulture, $"{i},{Math.Round(2_050 + (radius * Math.Cos(angle)) + (2 * random.NextNormal()))},{Math.Round(2_040 + (radius * Math.Sin(angle)) + (2 * random.NextNormal()))}\n");
        }

        return text.ToString();
    }
}
