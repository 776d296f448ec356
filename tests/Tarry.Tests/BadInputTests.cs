using System.Text;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Tests;

/// <summary>What a user may give by mistake: a message with place and remedy, the right exit code, nothing half-made.</summary>
public class BadInputTests
{
    private const string Header = "condition,sitting,seq,press_time_us,latency_us,outcome\n";

    [Theory]
    [InlineData("wrong-columns.csv", "a,b\n1,2\n", "condition")]
    [InlineData("text-in-numbers.csv", Header + "pad,a,1,100,fast,response\n", "line 2")]
    [InlineData("negative.csv", Header + "pad,a,1,100,-5,response\n", "line 2")]
    [InlineData("empty.csv", "", "empty")]
    [InlineData("header-only.csv", Header, "")]
    [InlineData("binary.csv", "\0\u0001\u0002\0\0PK\u0003\u0004", "binary.csv")]
    public async Task Import_OfWhatCannotBeKept_SaysWhereAndMakesNothing(string name, string content, string place)
    {
        using var folder = new TemporaryFolder();
        var study = await NewStudy(folder);
        var before = Snapshot(study);
        var run = await ProgramRun.Tarry("import", study, folder.Write(name, content));
        AssertRefused(run, ExitCode.WrongUse);
        Assert.Contains(name, run.Error, StringComparison.Ordinal);
        Assert.Contains(place, run.Error, StringComparison.Ordinal);
        Assert.Equal(before, Snapshot(study));
    }

    [Fact]
    public async Task Import_OfOneLineOf300Megabytes_SaysWhereAndMakesNothing()
    {
        using var folder = new TemporaryFolder();
        var study = await NewStudy(folder);
        var before = Snapshot(study);
        await using (var file = File.Create(folder["long.csv"]))
        {
            var megabyte = Encoding.ASCII.GetBytes(new string('x', 1 << 20));
            for (var i = 0; i < 300; i++)
            {
                await file.WriteAsync(megabyte, TestContext.Current.CancellationToken);
            }
        }

        var run = await ProgramRun.Tarry("import", study, folder["long.csv"]);
        AssertRefused(run, ExitCode.WrongUse);
        Assert.Contains("long.csv", run.Error, StringComparison.Ordinal);
        Assert.True(run.Error.Length < 2000, "the message does not repeat the line");
        Assert.Equal(before, Snapshot(study));
    }

    [Fact]
    public async Task Import_OfSomeBadRows_KeepsTheRestAndCountsThem()
    {
        using var folder = new TemporaryFolder();
        var study = await NewStudy(folder);
        var file = folder.Write("some.csv", Header + "pad,a,1,100,5000,response\npad,a,2,200,x,response\n,,3,300,5000,response\npad,a,4,400,5100,response\n");
        var run = await ProgramRun.Tarry("import", study, file);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("some.csv line 3", run.Error, StringComparison.Ordinal);
        Assert.Contains("some.csv line 4", run.Error, StringComparison.Ordinal);
        var counts = System.Text.Json.JsonDocument.Parse(await ProgramRun.Done("analyse", study, "--json")).RootElement.GetProperty("counts");
        Assert.Equal(4, counts.GetProperty("captured").GetInt64());
        Assert.Equal(2, counts.GetProperty("used").GetInt64());
        Assert.Equal(2, counts.GetProperty("refused").GetInt64());
    }

    [Theory]
    [InlineData("analyse")]
    [InlineData("check")]
    [InlineData("report")]
    [InlineData("export")]
    public async Task Command_OnAMissingStudy_SaysSo(string command)
    {
        using var folder = new TemporaryFolder();
        var run = await ProgramRun.Tarry(command, folder["nowhere"]);
        AssertRefused(run, ExitCode.WrongUse);
        Assert.Contains(folder["nowhere"], run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["nowhere"]));
    }

    [Fact]
    public async Task Run_OfAnUnknownCondition_SaysHowToDeclareIt()
    {
        using var folder = new TemporaryFolder();
        var study = await NewStudy(folder);
        var run = await ProgramRun.Tarry("run", study, "--condition", "nope", "--sitting", "a", "--port", "simulated", "--trials", "10");
        AssertRefused(run, ExitCode.WrongUse);
        Assert.Contains("tarry condition", run.Error, StringComparison.Ordinal);
        Assert.Empty(Study.Open(study).SessionKeys);
    }

    [Fact]
    public async Task Run_OnAPortThatIsNotThere_IsAFailureOfTheRig()
    {
        using var folder = new TemporaryFolder();
        var study = await NewStudy(folder);
        var run = await ProgramRun.Tarry("run", study, "--condition", "pad", "--sitting", "a", "--port", folder["no-port"], "--trials", "10");
        AssertRefused(run, ExitCode.RigOrDiskFailed);
    }

    [Fact]
    public async Task Demo_IntoAStudyThatIsThere_TouchesNothing()
    {
        using var folder = new TemporaryFolder();
        var study = await NewStudy(folder);
        var before = Snapshot(study);
        AssertRefused(await ProgramRun.Tarry("demo", "--out", study), ExitCode.WrongUse);
        Assert.Equal(before, Snapshot(study));
    }

    [Theory]
    [InlineData("bogus")]
    [InlineData("run")]
    [InlineData("analyse", "x", "--bogus")]
    [InlineData("new", "x", "--margin-ms", "wide")]
    [InlineData("export", "x", "--format", "spreadsheet")]
    public async Task CommandLine_ThatIsWrong_IsWrongUse(params string[] arguments) =>
        AssertRefused(await ProgramRun.Tarry(arguments), ExitCode.WrongUse);

    private static async Task<string> NewStudy(TemporaryFolder folder)
    {
        await ProgramRun.Done("new", folder["study"], "--reference", "pad");
        await ProgramRun.Done("condition", folder["study"], "pad", "--link", "usb");
        return folder["study"];
    }

    private static void AssertRefused(ProgramRun run, int exitCode)
    {
        Assert.Equal(exitCode, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.StartsWith("tarry: ", run.Error.Split('\n').First(line => line != "connecting"), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }

    private static Dictionary<string, string> Snapshot(string study) => Directory
        .EnumerateFiles(study, "*", SearchOption.AllDirectories)
        .Where(path => Path.GetFileName(path) != ".lock")
        .ToDictionary(path => Path.GetRelativePath(study, path), File.ReadAllText);
}
