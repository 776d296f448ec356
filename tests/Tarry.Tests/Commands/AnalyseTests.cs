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
}
