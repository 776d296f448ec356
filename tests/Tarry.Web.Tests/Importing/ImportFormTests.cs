using Tarry.Imports;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.UsbWire;
using Tarry.Statistics.Edges;
using Tarry.Web.Importing;

namespace Tarry.Web.Tests.Importing;

public class ImportFormTests
{
    private static readonly string[] Files = ["a.csv"];

    [Fact]
    public void ToRequest_OfNothingEntered_IsWhatTheCommandLineTakes()
    {
        var request = new ImportForm().ToRequest(Files, ImportFormat.LongForm)!;
        Assert.Equal(new DelimitedTextOptions().Delimiter, request.Text.Delimiter);
        Assert.Null(request.Text.Condition);
        Assert.Null(request.Video);
        Assert.Null(request.Cable);
        Assert.Equal((5, 60, 0, 500), (request.Logic.DebounceMs, request.Sound.DebounceMs, request.Logic.Window.ShortestMs, request.Logic.Window.LongestMs));
    }

    [Fact]
    public void ToRequest_OfEveryKindOfOption_TakesIt()
    {
        var form = new ImportForm
        {
            ["--condition"] = " quill-usb ",
            ["--latency-unit"] = "ms",
            ["--delimiter"] = "\t",
            ["--decimal-comma"] = "yes",
            ["--factor"] = "cable, desk,",
            ["--press-edge"] = "falling",
            ["--max-latency-ms"] = "80.5",
            ["--press-channel"] = "2",
            ["--capture-fps"] = "240",
            ["--usb-plus-channel"] = "dp",
            ["--usb-minus-channel"] = "dm",
            ["--usb-speed"] = "full",
        };
        var request = form.ToRequest(Files, ImportFormat.Logic)!;
        Assert.Equal(("quill-usb", TimeUnit.Milliseconds, '\t', true), (request.Text.Condition, request.Text.LatencyUnit, request.Text.Delimiter, request.Text.DecimalComma));
        Assert.Equal(["cable", "desk"], request.Text.FactorColumns);
        Assert.Equal((SignalEdge.Falling, 80.5), (request.Logic.PressEdge, request.Logic.Window.LongestMs));
        Assert.Equal((2, 240d), (request.Sound.PressChannel, request.Video!.CaptureFps));
        Assert.Equal(new UsbCable("dp", "dm", UsbCableSpeed.Full), request.Cable);
    }

    [Theory]
    [InlineData("--debounce-ms", "five")]
    [InlineData("--capture-fps", "0")]
    [InlineData("--max-latency-ms", "1,5")]
    [InlineData("--press-threshold", "NaN")]
    [InlineData("--usb-plus-channel", "dp")]
    public void ToRequest_OfAValueThatCannotBeOne_SaysWhereAndAsksForNothing(string option, string value)
    {
        var form = new ImportForm { [option] = value };
        Assert.Null(form.ToRequest(Files, ImportFormat.Logic));
        Assert.Single(form.Problems);
        form[option] = null;
        Assert.NotNull(form.ToRequest(Files, ImportFormat.Logic));
        Assert.Empty(form.Problems);
    }

    [Theory]
    [InlineData("Give --condition ID and --sitting ID.", "Give \u201cCondition\u201d and \u201cSitting\u201d.")]
    [InlineData("Give --latency-column NAME, or --delimiter if the cells were not told apart.", "Give \u201cColumn of the latency\u201d, or \u201cBetween cells\u201d if the cells were not told apart.")]
    [InlineData("An --option of nobody stays.", "An --option of nobody stays.")]
    public void InFormWords_OfAMessageThatNamesOptions_NamesTheFields(string message, string shown) => Assert.Equal(shown, ImportOption.InFormWords(message));

    [Fact]
    public void Options_OfEveryFormat_ExistAndStandOnce() => Assert.All(ImportFormat.All, format =>
    {
        string[] names = [.. ImportOption.First(format).Concat(ImportOption.Further(format)).Select(option => option.Name)];
        Assert.Equal(names.Distinct(), names);
    });
}
