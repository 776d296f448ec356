namespace Tarry.Tests.Commands;

public class WrongUseTests
{
    [Theory]
    [InlineData("STUDY is empty", "new", "")]
    [InlineData("STUDY is empty", "check", "")]
    [InlineData("FILE is empty", "import", "STUDY", "")]
    [InlineData("--title is empty", "new", "other", "--title", "")]
    [InlineData("'Bench Board' is not a name for --reference", "new", "other", "--reference", "Bench Board")]
    [InlineData("'Quill 2' is not a name for ID", "condition", "STUDY", "Quill 2")]
    [InlineData("'Mon Day' is not a name for --sitting", "run", "STUDY", "--condition", "quill", "--sitting", "Mon Day", "--port", "simulated")]
    [InlineData("'con' is not a name for --condition", "run", "STUDY", "--condition", "con", "--sitting", "monday", "--port", "simulated")]
    [InlineData("--margin-ms cannot be 0", "new", "other", "--margin-ms", "0")]
    [InlineData("'NaN' is not a number for --margin-ms", "new", "other", "--margin-ms", "NaN")]
    [InlineData("'x' is not a number for --margin-ms", "new", "other", "--margin-ms", "x")]
    [InlineData("'0,7' is not a number for --margin-ms", "new", "other", "--margin-ms", "0,7")]
    [InlineData("--nominal-report-hz cannot be -5", "condition", "STUDY", "quill", "--nominal-report-hz", "-5")]
    [InlineData("'1,5' is not a number for --hold-ms", "run", "STUDY", "--condition", "quill", "--sitting", "monday", "--port", "simulated", "--hold-ms", "1,5")]
    [InlineData("'x' is not a value for --trials", "run", "STUDY", "--condition", "quill", "--sitting", "monday", "--port", "simulated", "--trials", "x")]
    [InlineData("'-1' is not a value for --seed", "analyse", "STUDY", "--seed", "-1")]
    [InlineData("shortest press interval", "run", "STUDY", "--condition", "quill", "--sitting", "monday", "--port", "simulated", "--interval-ms", "0..100")]
    public async Task WrongValue_IsNamedWithItsOption_AndNothingIsMade(string problem, params string[] arguments)
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["study"]);
        await ProgramRun.Done("condition", folder["study"], "quill");
        var before = Everything(folder["study"]);
        var run = await ProgramRun.Tarry([.. arguments.Select(argument => argument switch
        {
            "STUDY" => folder["study"],
            "other" => folder["other"],
            _ => argument,
        })]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(problem, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", run.Error, StringComparison.Ordinal);
        Assert.Equal(before, Everything(folder["study"]));
        Assert.False(Path.Exists(folder["other"]));
    }

    [Theory]
    [InlineData("report")]
    [InlineData("export")]
    public async Task OutThatIsAFile_IsWrongUse_AndTheFileStays(string command)
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["study"]);
        await File.WriteAllTextAsync(folder["file"], "mine", TestContext.Current.CancellationToken);
        var run = await ProgramRun.Tarry(command, folder["study"], "--out", folder["file"]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("is a file", run.Error, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync(folder["file"], TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task PlaceOfOneLetter_IsSaid_ThoughTheMessageHasThatLetter()
    {
        using var folder = new TemporaryFolder();
        await ProgramRun.Done("new", folder["study"]);
        await File.WriteAllTextAsync(folder["e"], "", TestContext.Current.CancellationToken);
        var run = await ProgramRun.Tarry("import", folder["study"], folder["e"]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("where: e", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunHelp_GivesTheDefaultIntervalAsItIsTyped()
    {
        var help = (await ProgramRun.Tarry("run", "--help")).Out;
        Assert.Contains("[default: 70..120]", help, StringComparison.Ordinal);
        Assert.DoesNotContain("70000", help, StringComparison.Ordinal);
    }

    private static string Everything(string folder) => string.Join('\n', Directory
        .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .Where(file => !Path.GetFileName(file).StartsWith(".lock", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal)
        .Select(file => file + "\n" + File.ReadAllText(file)));
}
