namespace Tarry.Tests.Commands;

public sealed class ImportRecordingTests : IDisposable
{
    private const string Dump = "$timescale 1 us $end $var wire 1 ! contact $end $var wire 1 \" lamp $end $enddefinitions $end\n"
        + "#0 0! 0\" #10000 1! #18125 1\" #30000 0! 0\" #110000 1! #118500 1\" #130000 0! 0\" #900000 0!\n";

    private readonly TemporaryFolder folder = new();

    [Fact]
    public async Task Dump_IsTakenInAndAnalysed()
    {
        var study = await Study();
        var file = folder.Write("x.vcd", Dump);
        string[] import = ["import", study, file, "--condition", "quill", "--sitting", "monday", "--press-channel", "contact", "--response-channel", "lamp"];
        Assert.Contains("would keep 2 of 2 trials", await ProgramRun.Done([.. import, "--dry-run", "--explain"]), StringComparison.Ordinal);
        Assert.Contains("kept 2 of 2 trials", await ProgramRun.Done(import), StringComparison.Ordinal);
        await ProgramRun.Done("check", study);
        Assert.Contains("8125", await File.ReadAllTextAsync(await Export(study), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        var again = await ProgramRun.Tarry(import);
        Assert.Equal(2, again.ExitCode);
        Assert.Contains("already", again.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("x.vcd", Dump, "--press-channel")]
    [InlineData("x.vcd", "RIFF", "WAV")]
    [InlineData("x.csv", "pts_time,press,response\n0,1,1\n", "--capture-fps")]
    public async Task Recording_WithoutWhatItNeeds_AsksForIt(string name, string text, string asked)
    {
        var run = await ProgramRun.Tarry("import", await Study(), folder.Write(name, text), "--condition", "quill", "--sitting", "monday");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(asked, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Recording_WithoutASession_AsksForIt()
    {
        var run = await ProgramRun.Tarry("import", await Study(), folder.Write("x.vcd", Dump), "--press-channel", "contact", "--response-channel", "lamp");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--condition", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Profile_ThatWasSaved_ReadsTheNextFileOfItsForm()
    {
        var study = await Study();
        var (first, second) = (folder.Write("a.txt", "% from a bench\nquill;8,5\nquill;9,25\n"), folder.Write("b.txt", "quill;7,5\n"));
        await ProgramRun.Done(
            "import", study, first, "--sitting", "monday", "--header", "condition,delay", "--comment", "%", "--delimiter", ";", "--decimal-comma", "--latency-column", "delay", "--latency-unit", "ms", "--save-profile", "bench");
        Assert.Contains("kept 1 of 1 row", await ProgramRun.Done("import", study, second, "--sitting", "tuesday", "--profile", "bench"), StringComparison.Ordinal);
        var table = await File.ReadAllTextAsync(await Export(study), TestContext.Current.CancellationToken);
        Assert.Contains("9250", table, StringComparison.Ordinal);
        Assert.Contains("7500", table, StringComparison.Ordinal);
        Assert.Equal(2, (await ProgramRun.Tarry("import", study, second, "--sitting", "friday", "--profile", "other")).ExitCode);
    }

    public void Dispose() => folder.Dispose();

    private async Task<string> Study()
    {
        var study = folder["pads"];
        await ProgramRun.Done("new", study);
        return study;
    }

    private async Task<string> Export(string study)
    {
        await ProgramRun.Done("export", study, "--format", "csv", "--out", folder["out"]);
        return Directory.GetFiles(folder["out"], "*.csv").Single();
    }
}
