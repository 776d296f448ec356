using System.Text;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Tests.Commands;

/// <summary>The positions of a stick through the whole program.</summary>
public class ImportStickTests
{
    [Fact]
    public async Task Import_Table_BecomesASessionThatChecks()
    {
        using var folder = new TemporaryFolder();
        var study = folder["study"];
        var table = folder["rim.csv"];
        await File.WriteAllTextAsync(table, Circle(), Encoding.UTF8, TestContext.Current.CancellationToken);
        await ProgramRun.Done("new", study);
        string[] import = ["import", study, table, "--kind", "stick", "--procedure", "rim-sweep", "--x-range", "0..255", "--condition", "quill-usb", "--sitting", "monday"];

        var dry = await ProgramRun.Done([.. import, "--dry-run", "--explain"]);
        Assert.Contains("would keep 360 of 361 positions in 1 session, 1 new condition", dry, StringComparison.Ordinal);
        Assert.Contains("monday.quill-usb.rim-sweep: 360 positions, x 0..255, y 0..255", dry, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(study, "sessions")));
        var done = await ProgramRun.Tarry(import);

        Assert.Equal(ExitCode.Done, done.ExitCode);
        Assert.Contains("refused 1 position", done.Error, StringComparison.Ordinal);
        Assert.Contains("rim.csv line 3: x is 999, outside 0..255", done.Error, StringComparison.Ordinal);
        Assert.Contains("monday.quill-usb.rim-sweep: 360 positions of a stick", await ProgramRun.Done("check", study), StringComparison.Ordinal);
        Assert.Equal(360, Study.Open(study).ReadStick(Study.Open(study).StickKeys.Single()).Samples.Count);
        var again = await ProgramRun.Tarry(import);
        Assert.Equal(ExitCode.WrongUse, again.ExitCode);
        Assert.Contains("has monday.quill-usb.rim-sweep already", again.Error, StringComparison.Ordinal);
        // Another procedure of the same condition in the same sitting stands beside it.
        await ProgramRun.Done([.. import.Select(word => word == "rim-sweep" ? "rest" : word)]);
        Assert.Equal(2, Study.Open(study).StickKeys.Count);
    }

    [Theory]
    [InlineData("--x-range", "--kind", "stick", "--procedure", "rest")]
    [InlineData("--procedure", "--kind", "stick", "--x-range", "0..255")]
    [InlineData("is no range for --x-range", "--kind", "stick", "--procedure", "rest", "--x-range", "255..0")]
    [InlineData("shaking", "--kind", "stick", "--procedure", "shaking", "--x-range", "0..255")]
    public async Task Import_WithoutWhatATableDoesNotSay_IsWrongUse(string told, params string[] options)
    {
        using var folder = new TemporaryFolder();
        await File.WriteAllTextAsync(folder["rim.csv"], Circle(), TestContext.Current.CancellationToken);
        await ProgramRun.Done("new", folder["study"]);

        var run = await ProgramRun.Tarry(["import", folder["study"], folder["rim.csv"], "--condition", "quill-usb", "--sitting", "monday", .. options]);

        Assert.Equal(ExitCode.WrongUse, run.ExitCode);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
        Assert.Empty(Study.Open(folder["study"]).StickKeys);
    }

    /// <summary>A turn along the rim in whole degrees, 4 ms each, and one row that cannot be.</summary>
    private static string Circle()
    {
        var text = new StringBuilder("time_ms,x,y\n");
        for (var degree = 0; degree < 360; degree++)
        {
            var (sine, cosine) = Math.SinCos(degree * Math.PI / 180);
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{4 * degree},{Math.Round(127.5 + (127 * cosine))},{Math.Round(127.5 + (127 * sine))}\n");
            text.Append(degree == 0 ? "1,999,0\n" : "");
        }

        return text.ToString();
    }
}
