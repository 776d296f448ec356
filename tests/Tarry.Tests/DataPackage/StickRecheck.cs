using System.Globalization;
using System.Text.Json;

namespace Tarry.Tests.DataPackage;

/// <summary>What the scripts of a package recompute of sticks, beside its findings.</summary>
internal static class StickRecheck
{
    public const string Python = "/usr/bin/python3";

    // findings.json and the scripts each round to six decimals: half a digit each. The fits themselves end far below that.
    private const double Tolerance = 1.1e-6;

    public static bool HasSciPy => File.Exists(Python) && Directory.Exists("/usr/lib/python3/dist-packages/scipy");

    public static JsonElement Findings(string package) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(package, "findings.json"))).RootElement.GetProperty("sticks");

    /// <summary>The recomputed values; what the scripts print as published is left aside.</summary>
    public static Dictionary<(string Condition, string Key), double> Values(string printed)
    {
        var lines = printed.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var values = lines[..^1].Select(line => line.Split(" | ")).ToDictionary(cells => (cells[0], cells[1]), cells => double.Parse(cells[2], CultureInfo.InvariantCulture));
        Assert.StartsWith(string.Create(CultureInfo.InvariantCulture, $"{values.Count} values recomputed; greatest difference"), lines[^1], StringComparison.Ordinal);
        return values;
    }

    public static void AssertPublished(Dictionary<(string Condition, string Key), double> recomputed, JsonElement findings) => Assert.All(recomputed, entry =>
    {
        var published = findings.GetProperty("conditions").EnumerateArray()
            .Single(condition => condition.GetProperty("id").GetString() == entry.Key.Condition)
            .GetProperty("measures").GetProperty(entry.Key.Key).GetProperty("value").GetDouble();
        Assert.Equal(published, entry.Value, Tolerance);
    });
}
