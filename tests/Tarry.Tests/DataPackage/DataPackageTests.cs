using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using ParquetSharp;

namespace Tarry.Tests.DataPackage;

public partial class DataPackageTests(PackagedDemoFixture demo) : IClassFixture<PackagedDemoFixture>
{
    [Fact]
    public async Task RecheckR_OfTheDemo_PrintsTheHeadlineToTheLastDigit()
    {
        var rscript = Requirement.Program("Rscript", "r-base-core");
        using var folder = Exported();
        AssertIsTheHeadline(await OtherProgram.Done(rscript, folder.Path, "recheck.R"));
    }

    [Fact]
    public async Task RecheckPython_OfTheDemo_PrintsTheHeadlineToTheLastDigit()
    {
        var python = Requirement.Program("python3", "python3");
        using var folder = Exported();
        AssertIsTheHeadline(await OtherProgram.Done(python, folder.Path, "recheck.py"));
    }

    [Theory]
    [InlineData("recheck-sticks.R")]
    [InlineData("recheck-sticks.py")]
    public async Task RecheckSticks_OfTheDemo_FindsWhatIsPublished(string script)
    {
        var isR = script.EndsWith('R');
        Requirement.Needs(isR || StickRecheck.HasSciPy, "SciPy (Debian package python3-scipy)");
        var printed = await OtherProgram.Done(isR ? Requirement.Program("Rscript", "r-base-core") : StickRecheck.Python, demo.Package, script);
        var found = StickRecheck.Values(printed);
        // Four sticks: centre and noise of each axis; steps of three; two circles that are not cut off, their centres and deviations.
        Assert.Equal((4 * 4) + (3 * 2) + (2 * 4), found.Count);
        StickRecheck.AssertPublished(found, StickRecheck.Findings(demo.Package));
    }

    [Fact]
    public async Task RecheckScripts_OfChangedTrials_PrintAnotherHeadline()
    {
        var python = Requirement.Program("python3", "python3");
        using var folder = Exported();
        var before = await OtherProgram.Done(python, folder.Path, "recheck.py");
        var trials = await File.ReadAllLinesAsync(folder["trials.csv"], TestContext.Current.CancellationToken);
        var cells = trials[1].Split(',');
        cells[4] = "99000";
        trials[1] = string.Join(',', cells);
        await File.WriteAllLinesAsync(folder["trials.csv"], trials, TestContext.Current.CancellationToken);
        Assert.NotEqual(before, await OtherProgram.Done(python, folder.Path, "recheck.py"));
    }

    [Fact]
    public async Task RecheckScripts_OfFewSittings_SayWhatTheyCannotRecompute()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        await ProgramRun.Done("new", study, "--reference", "board");
        await ProgramRun.Done("import", study, folder.Write("few.csv", FewSittings()));
        await ProgramRun.Done("export", study, "--format", "datapackage", "--out", folder["package"]);
        var r = await OtherProgram.Done(Requirement.Program("Rscript", "r-base-core"), folder["package"], "recheck.R");
        var python = await OtherProgram.Done(Requirement.Program("python3", "python3"), folder["package"], "recheck.py");
        Assert.Equal(r, python);
        var analysed = Table(await ProgramRun.Done("analyse", study));
        foreach (var cells in Lines(r))
        {
            var (mean, difference) = (analysed[cells[0]][1], analysed[cells[0]][2]);
            if (cells[0] == "once")
            {
                AssertSameValue(mean, cells[1]);
                AssertSameValue(difference, cells[2]);
                continue;
            }

            Assert.Equal(mean, cells[1]);
            Assert.Equal(cells[0] == "apart" ? "no sitting with the reference" : difference, cells[2]);
        }
    }

    [Fact]
    public async Task Package_ReadByAGeneralReader_IsValidToTheLastRow()
    {
        var node = Requirement.Program("node", "nodejs");
        var tests = Path.Combine(Repository.Root, "tests", "Tarry.Tests");
        Requirement.Needs(Directory.Exists(Path.Combine(tests, "node_modules", "datapackage")), "the npm package datapackage: run npm ci in tests/Tarry.Tests");
        using var folder = Exported();
        var script = Path.Combine(AppContext.BaseDirectory, "DataPackage", "read-package.js");
        var read = await OtherProgram.Done(node, folder.Path, script, tests, folder["datapackage.json"]);
        Assert.StartsWith("trials 28800\nheadline 12\nstick-recordings 72\nstick-findings ", read, StringComparison.Ordinal);
        Assert.Equal(72, read.Split('\n').Count(line => line.StartsWith("sticks/", StringComparison.Ordinal)));

        // The same reader refuses a row that breaks the schema: a level that is none, and a key that is there twice.
        var trials = await File.ReadAllTextAsync(folder["trials.csv"], TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(folder["trials.csv"], ResponseWord().Replace(trials, ",answered,", 1), TestContext.Current.CancellationToken);
        await Assert.ThrowsAnyAsync<Exception>(() => OtherProgram.Done(node, folder.Path, script, tests, folder["datapackage.json"]));
        await File.WriteAllTextAsync(folder["trials.csv"], trials + trials.Split('\n')[1] + "\n", TestContext.Current.CancellationToken);
        await Assert.ThrowsAnyAsync<Exception>(() => OtherProgram.Done(node, folder.Path, script, tests, folder["datapackage.json"]));
    }

    [Fact]
    public async Task Descriptor_OfEveryFile_HasItsLengthAndDigest()
    {
        var sha256sum = Requirement.Program("sha256sum", "coreutils");
        using var folder = Exported();
        var resources = Descriptor(folder).GetProperty("resources").EnumerateArray().ToList();
        Assert.Equal(resources.Count, resources.Select(resource => resource.GetProperty("name").GetString()).Distinct().Count());
        foreach (var resource in resources)
        {
            var name = resource.GetProperty("path").GetString()!;
            Assert.Equal(new FileInfo(folder[name]).Length, resource.GetProperty("bytes").GetInt64());
            Assert.Equal("sha256:" + (await OtherProgram.Done(sha256sum, folder.Path, name)).Split(' ')[0], resource.GetProperty("hash").GetString());
        }

        Assert.Equal(
            Directory.GetFiles(folder.Path, "*", SearchOption.AllDirectories).Select(path => Relative(path, folder.Path)).Where(name => name != "datapackage.json").Order(StringComparer.Ordinal),
            resources.Select(resource => resource.GetProperty("path").GetString()!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Package_Twice_HasTheSameBytes()
    {
        using var once = Exported();
        using var again = new TemporaryFolder();
        await ProgramRun.Done("export", demo.Study, "--format", "datapackage", "--licence", "CC-BY-4.0", "--out", again.Path);
        Assert.All(Directory.GetFiles(once.Path, "*", SearchOption.AllDirectories), path => Assert.Equal(File.ReadAllBytes(path), File.ReadAllBytes(again[Relative(path, once.Path)])));
    }

    [Fact]
    public async Task Package_OfASimulatedStudy_SaysSoAndItsFindingsAreThoseOfAnalyse()
    {
        using var folder = Exported();
        Assert.Contains("simulated bench with invented devices", await File.ReadAllTextAsync(folder["README.md"], TestContext.Current.CancellationToken));
        Assert.Equal(await ProgramRun.Done("analyse", demo.Study, "--json"), await File.ReadAllTextAsync(folder["findings.json"], TestContext.Current.CancellationToken));
        Assert.Equal(
            await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", "findings.schema.json"), TestContext.Current.CancellationToken),
            await File.ReadAllTextAsync(folder["findings.schema.json"], TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Licence_GivenOrNot_IsStatedOrAskedFor()
    {
        using var folder = new TemporaryFolder();
        var without = await ProgramRun.Tarry("export", demo.Study, "--format", "datapackage", "--out", folder.Path);
        Assert.Equal(0, without.ExitCode);
        Assert.Contains("--licence", without.Error);
        Assert.False(Descriptor(folder).TryGetProperty("licenses", out _));

        await ProgramRun.Done("export", demo.Study, "--format", "datapackage", "--out", folder.Path, "--licence", "cc-by-4.0", "--package-version", "2.1.0");
        Assert.Equal("CC-BY-4.0", Descriptor(folder).GetProperty("licenses")[0].GetProperty("name").GetString());
        Assert.Equal("2.1.0", Descriptor(folder).GetProperty("version").GetString());

        var wrong = await ProgramRun.Tarry("export", demo.Study, "--format", "datapackage", "--out", folder["wrong"], "--licence", "as you like");
        Assert.Equal(2, wrong.ExitCode);
        Assert.False(Directory.Exists(folder["wrong"]));
    }

    [Fact]
    public async Task Parquet_OfTheDemo_HasTheRowsOfTheCsv()
    {
        using var folder = Exported();
        var expected = await File.ReadAllLinesAsync(folder["trials.csv"], TestContext.Current.CancellationToken);
        using var file = new ParquetFileReader(folder["trials.parquet"]);
        var names = Enumerable.Range(0, file.FileMetaData.NumColumns).Select(file.FileMetaData.Schema.Column).Select(column => column.Name).ToList();
        Assert.Equal(expected[0], string.Join(',', names));
        var line = 1;
        for (var group = 0; group < file.FileMetaData.NumRowGroups; group++)
        {
            using var rows = file.RowGroup(group);
            var columns = names.Select((_, index) => Cells(rows, index)).ToList();
            for (var row = 0; row < rows.MetaData.NumRows; row++)
            {
                Assert.Equal(expected[line++], string.Join(',', columns.Select(column => column[row])));
            }
        }

        Assert.Equal(expected.Length, line);
    }

    private static string[] Cells(RowGroupReader rows, int index)
    {
        using var column = rows.Column(index).LogicalReader();
        return column switch
        {
            LogicalColumnReader<string?> text => [.. text.ReadAll((int)rows.MetaData.NumRows).Select(cell => cell ?? "")],
            LogicalColumnReader<double?> number => [.. number.ReadAll((int)rows.MetaData.NumRows).Select(cell => cell?.ToString("0.###", CultureInfo.InvariantCulture) ?? "")],
            LogicalColumnReader<long> whole => [.. whole.ReadAll((int)rows.MetaData.NumRows).Select(cell => cell.ToString(CultureInfo.InvariantCulture))],
            LogicalColumnReader<int> whole => [.. whole.ReadAll((int)rows.MetaData.NumRows).Select(cell => cell.ToString(CultureInfo.InvariantCulture))],
            _ => throw new InvalidOperationException($"column {index} is {column}"),
        };
    }

    [Fact]
    public async Task Parquet_WithoutAFolder_IsWrongUse()
    {
        var run = await ProgramRun.Tarry("export", demo.Study, "--format", "parquet");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--out", run.Error);
    }

    private TemporaryFolder Exported()
    {
        var folder = new TemporaryFolder();
        foreach (var path in Directory.GetFiles(demo.Package, "*", SearchOption.AllDirectories))
        {
            var copy = folder[Relative(path, demo.Package)];
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(path, copy);
        }

        return folder;
    }

    private static string Relative(string path, string folder) => Path.GetRelativePath(folder, path).Replace('\\', '/');

    private static JsonElement Descriptor(TemporaryFolder folder) => JsonDocument.Parse(File.ReadAllText(folder["datapackage.json"])).RootElement;

    private void AssertIsTheHeadline(string printed)
    {
        var expected = Table(demo.Terminal);
        var lines = Lines(printed);
        Assert.Equal(expected.Keys, lines.Select(cells => cells[0]));
        Assert.All(lines, cells =>
        {
            var row = expected[cells[0]];
            Assert.Equal((row[1], row[2], row[6], row[7]), (cells[1], cells[2], cells[3], cells[4]));
        });
    }

    private static List<string[]> Lines(string printed) =>
        [.. printed.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(" | "))];

    // One sitting: the scripts cannot recompute its interval, say so, and give the value to the microsecond.
    private static void AssertSameValue(string printed, string recomputed)
    {
        var value = printed.Split(' ')[0];
        var decimals = value.Contains('.', StringComparison.Ordinal) ? value.Length - value.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        Assert.EndsWith(" (interval: see findings.json)", recomputed, StringComparison.Ordinal);
        Assert.Equal(
            decimal.Parse(value, NumberStyles.Float, CultureInfo.InvariantCulture),
            decimal.Round(decimal.Parse(recomputed.Split(' ')[0], NumberStyles.Float, CultureInfo.InvariantCulture), decimals));
    }

    // The headline table of the terminal by condition, in its order: cells stand two or more spaces apart.
    private static Dictionary<string, string[]> Table(string terminal) => terminal.Split('\n')
        .SkipWhile(line => !line.StartsWith('─'))
        .Skip(1)
        .TakeWhile(line => line.Trim().Length > 0)
        .Select(line => Gap().Split(line.Trim())[1..])
        .ToDictionary(cells => cells[0]);

    // Three conditions in three sittings, one that ran once, and one that never met the reference.
    private static string FewSittings()
    {
        var lines = new List<string> { "condition,sitting,latency_us" };
        void Add(string condition, string sitting, double centreMs)
        {
            for (var i = 0; i < 60; i++)
            {
                lines.Add(string.Create(CultureInfo.InvariantCulture, $"{condition},{sitting},{1000 * (centreMs + (i * 7 % 60 / 30.0)):0.###}"));
            }
        }

        foreach (var (sitting, offset) in new[] { ("a", 0.0), ("b", 0.21), ("c", -0.13) })
        {
            Add("board", sitting, 5 + offset);
            Add("pad", sitting, 7.1 + (1.3 * offset));
            Add("stick", sitting, 9.3 - (0.4 * offset));
        }

        Add("once", "b", 8.2);
        Add("apart", "d", 6.1);
        Add("apart", "e", 6.4);
        return string.Join('\n', lines) + "\n";
    }

    [GeneratedRegex(" {2,}")]
    private static partial Regex Gap();

    [GeneratedRegex(",response,")]
    private static partial Regex ResponseWord();
}
