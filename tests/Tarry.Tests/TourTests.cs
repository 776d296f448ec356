using System.Text.RegularExpressions;

namespace Tarry.Tests;

public partial class TourTests
{
    [Fact]
    public async Task Tour_EveryCommandInOrder_RunsOnTheSimulatedBench()
    {
        var bash = Requirement.Program("bash", "bash");
        Requirement.Program("python3", "python3");
        var page = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", "tour.md"), TestContext.Current.CancellationToken);
        var blocks = ShellBlock().Matches(page).Select(block => block.Groups[1].Value).ToList();
        Assert.Equal(Fence().Count(page), 2 * blocks.Count);
        using var folder = new TemporaryFolder();
        folder.Write("tour", string.Join(
            '\n',
            ["set -euo pipefail", $"tarry() {{ dotnet '{Path.Combine(AppContext.BaseDirectory, "tarry.dll")}' \"$@\"; }}", .. blocks]));

        var said = await OtherProgram.Done(bash, folder.Path, "tour");

        Assert.Contains("The study is whole.", said);
        Assert.Contains("excluded 20", said);
        Assert.Contains("tamarind-usb is slower than quill-usb", said);
        Assert.Contains("tamarind-usb (Tamarind, firmware 3.1) is faster than tamarind-usb (Quill 2 and Tamarind)", said);
        Assert.Contains("device_firmware 3.1 against 3.0", said);
        Assert.True(File.Exists(Path.Combine(folder["published"], "report.html")));
        Assert.True(File.Exists(Path.Combine(folder["published"], "data", "datapackage.json")));
        foreach (var row in new[] { "bench-board", "quill-usb", "tamarind-usb" })
        {
            Assert.Contains($"\n{row} | ", said);
        }
    }

    [GeneratedRegex(@"^```sh\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex ShellBlock();

    [GeneratedRegex("^```", RegexOptions.Multiline)]
    private static partial Regex Fence();
}
