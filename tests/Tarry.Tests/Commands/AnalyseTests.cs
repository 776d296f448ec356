using System.Globalization;
using System.Text;
using Tarry.Output;

namespace Tarry.Tests.Commands;

public class AnalyseTests
{
    [Fact]
    public async Task ConditionWithoutAResponse_HasALineOfItsOwn_WithoutARank()
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["study"]);
        await File.WriteAllTextAsync(
            folder["rows.csv"],
            "condition,sitting,latency_us\nquill,monday,5000\nquill,monday,5100\ndeadpad,monday,\ndeadpad,monday,\n",
            TestContext.Current.CancellationToken);
        await ProgramRun.Done("import", folder["study"], folder["rows.csv"]);
        var line = Assert.Single((await ProgramRun.Done("analyse", folder["study"])).Split('\n'), line => line.Contains(" deadpad ", StringComparison.Ordinal) && !line.StartsWith("caution", StringComparison.Ordinal));
        Assert.StartsWith("-", line.Trim(), StringComparison.Ordinal);
    }

    /// <summary>A test's terminal has no size, and then counts as 80 columns wide.</summary>
    [Fact]
    public async Task NarrowTerminal_BreaksNoNumberAndNoVerdict()
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["study"], "--reference", "the-bench-board-itself");
        var rows = new StringBuilder("condition,sitting,latency_us\n");
        foreach (var sitting in new[] { "monday", "tuesday" })
        {
            for (var i = 0; i < 50; i++)
            {
                rows.Append(CultureInfo.InvariantCulture, $"the-bench-board-itself,{sitting},{5_000_000 + (i % 7)}\nquill-over-a-long-name,{sitting},{9_000_000 + (i % 5)}\n");
            }
        }

        await File.WriteAllTextAsync(folder["rows.csv"], rows.ToString(), TestContext.Current.CancellationToken);
        await ProgramRun.Done("import", folder["study"], folder["rows.csv"]);
        using var output = new StringWriter();
        await CommandLine.RunAsync(["analyse", folder["study"]], new Terminal(output, TextWriter.Null, ShowsProgress: false, OutIsTerminal: true));
        var line = Assert.Single(output.ToString().Split("The device alone")[0].Split('\n'), line => line.Contains("quill-over-a-long-name", StringComparison.Ordinal) && !line.StartsWith("caution", StringComparison.Ordinal));
        Assert.Matches(@"9,000\.\d{3} \([\d,]+\.\d{3} to [\d,]+\.\d{3}\)", line);
        Assert.Contains("slower", line, StringComparison.Ordinal);
    }
}
