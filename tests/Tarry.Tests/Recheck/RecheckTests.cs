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
    private const string Reference = "bench-board";

    [Fact]
    public async Task R_FromTheExport_FindsTheSame()
    {
        var rscript = Requirement.Program("Rscript", "r-base-core, r-bioc-limma");
        var found = await Recompute(rscript, "recheck.R", folder => [folder["trials.csv"], Reference, folder["kept-out.txt"], folder["out.csv"]]);
        Assert.True(found.Count > 500, $"R recomputed {found.Count} values");
        Compare(found);
    }

    [Fact]
    public async Task SciPy_FromTheExport_FindsTheSame()
    {
        const string python = "/usr/bin/python3";
        Requirement.Needs(File.Exists(python) && Directory.Exists("/usr/lib/python3/dist-packages/scipy"), "SciPy (Debian package python3-scipy)");
        var found = await Recompute(python, "recheck.py", folder => [folder["trials.csv"], folder["stated.csv"], folder["out.csv"]]);
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
        folder.Write("stated.csv", string.Join('\n', demo.Findings.GetProperty("conditions").EnumerateArray().Select(Stated)
            .Prepend("condition,late_beyond_ms,sound_sittings,reference,reference_interval_ms")) + "\n");
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

    // What the study states beside its results, and no result.
    private static string Stated(JsonElement condition)
    {
        var alone = condition.GetProperty("device_only");
        var isReference = alone.ValueKind == JsonValueKind.Null;
        return string.Join(
            ',',
            condition.GetProperty("id").GetString(),
            condition.GetProperty("late_definition").GetProperty("later_than_ms").GetRawText(),
            isReference ? "" : string.Join(' ', alone.GetProperty("sittings").EnumerateArray().Select(sitting => sitting.GetString())),
            Reference,
            isReference ? "" : alone.GetProperty("reference_interval_ms").GetRawText());
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

        if (statistic == "cost_ms.value")
        {
            return Cost(condition.Split('/'));
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

    // A level is set against its baseline in one direction only.
    private double Cost(string[] levels)
    {
        var costs = demo.Findings.GetProperty("factors").EnumerateArray()
            .Single(factor => factor.GetProperty("factor").GetString() == "layer")
            .GetProperty("costs").EnumerateArray();
        var cost = costs.Single(one => levels.Order().SequenceEqual(new[] { Text(one, "level"), Text(one, "baseline") }.Order()));
        return (Text(cost, "level") == levels[0] ? 1 : -1) * cost.GetProperty("cost_ms").GetProperty("value").GetDouble();
    }

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;

    private JsonElement Entry(string array, Func<JsonElement, bool> which) => demo.Findings.GetProperty(array).EnumerateArray().Single(which);

    private static bool IsPair(JsonElement entry, string[] pair) =>
        new[] { entry.GetProperty("a").GetString()!, entry.GetProperty("b").GetString()! }.Order().SequenceEqual(pair.Order());
}
