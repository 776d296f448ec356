using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Tarry.Tests.Recheck;

/// <summary>
/// R (limma's squeezeVar, qt, qbinom, quantile type 7, p.adjust, qtukey) and NumPy/SciPy recompute the demonstration's findings
/// from its exported CSV, and agree on every statistic that both compute.
/// </summary>
public class RecheckTests(DemoStudyFixture demo) : IClassFixture<DemoStudyFixture>
{
    // The document rounds to a nanosecond; limma's prior is found by iteration on both sides.
    private const double Relative = 1e-5;
    private const double Absolute = 2e-6;

    [Fact]
    public async Task R_FromTheExport_FindsTheSame()
    {
        var rscript = Requirement.Program("Rscript", "r-base-core, r-bioc-limma");
        var found = await Recompute(rscript, "recheck.R", folder => [folder["trials.csv"], "bench-board", folder["kept-out.txt"], folder["out.csv"]]);
        Assert.True(found.Count > 500, $"R recomputed {found.Count} values");
        Compare(found);
    }

    [Fact]
    public async Task SciPy_FromTheExport_FindsTheSame()
    {
        const string python = "/usr/bin/python3";
        Requirement.Needs(File.Exists(python) && Directory.Exists("/usr/lib/python3/dist-packages/scipy"), "SciPy (Debian package python3-scipy)");
        var found = await Recompute(python, "recheck.py", folder => [folder["trials.csv"], folder["out.csv"]]);
        Assert.True(found.Count > 80, $"SciPy recomputed {found.Count} values");
        Compare(found);
    }

    private async Task<List<(string Condition, string Statistic, double Value)>> Recompute(
        string program,
        string script,
        Func<TemporaryFolder, string[]> arguments)
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("export", demo.Study, "--out", folder.Path);
        folder.Write("kept-out.txt", string.Join('\n', demo.Findings.GetProperty("conditions").EnumerateArray()
            .SelectMany(condition => condition.GetProperty("session_findings").EnumerateArray())
            .Where(session => !session.GetProperty("in_pooled_variance").GetBoolean())
            .Select(session => session.GetProperty("session").GetString())) + "\n");
        var start = new ProcessStartInfo(program) { RedirectStandardError = true, RedirectStandardOutput = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "Recheck", script));
        foreach (var argument in arguments(folder))
        {
            start.ArgumentList.Add(argument);
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, await error);
        return [.. (await File.ReadAllLinesAsync(folder["out.csv"])).Skip(1)
            .Select(line => line.Replace("\"", "", StringComparison.Ordinal).Split(','))
            .Select(cells => (cells[0], cells[1], double.Parse(cells[2], CultureInfo.InvariantCulture)))];
    }

    private void Compare(List<(string Condition, string Statistic, double Value)> found) => Assert.All(found, entry =>
    {
        var ours = Ours(entry.Condition, entry.Statistic);
        Assert.True(
            Math.Abs(ours - entry.Value) <= Absolute + (Relative * Math.Abs(entry.Value)),
            $"{entry.Condition} {entry.Statistic}: findings {ours}, recomputed {entry.Value}");
    });

    private double Ours(string condition, string statistic)
    {
        if (statistic.EndsWith("_rank", StringComparison.Ordinal))
        {
            return Entry("ranking", entry => entry.GetProperty("id").GetString() == condition).GetProperty(statistic).GetDouble();
        }

        var pair = condition.Split('~');
        var element = pair.Length == 2
            ? Entry("comparisons", entry => IsPair(entry, pair))
            : Entry("conditions", entry => entry.GetProperty("id").GetString() == condition);
        var path = statistic.Split('.');
        var reversed = pair.Length == 2 && element.GetProperty("a").GetString() != pair[0];
        if (!reversed || path.Length == 1)
        {
            return path.Aggregate(element, (at, key) => at.GetProperty(key)).GetDouble();
        }

        var turned = path[1] switch { "low" => "high", "high" => "low", _ => path[1] };
        return -element.GetProperty(path[0]).GetProperty(turned).GetDouble();
    }

    private JsonElement Entry(string array, Func<JsonElement, bool> which) => demo.Findings.GetProperty(array).EnumerateArray().Single(which);

    private static bool IsPair(JsonElement entry, string[] pair) =>
        new[] { entry.GetProperty("a").GetString()!, entry.GetProperty("b").GetString()! }.Order().SequenceEqual(pair.Order());
}
