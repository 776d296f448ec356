using System.Globalization;
using System.Text.RegularExpressions;
using Tarry.Rig.HostEvents;
using Tarry.Tests;

namespace Tarry.Rig.Tests.HostEvents;

public partial class InputCodeTests
{
    [Fact]
    public void Known_EveryName_HasTheNumberOfTheKernelsHeader()
    {
        const string header = "/usr/include/linux/input-event-codes.h";
        Requirement.Needs(File.Exists(header), $"{header} (Debian package linux-libc-dev)");
        var numbers = File.ReadLines(header)
            .Select(line => Definition().Match(line))
            .Where(match => match.Success)
            .ToDictionary(match => match.Groups[1].Value, match => Number(match.Groups[2].Value));
        Assert.All(InputCode.Known, entry => Assert.Equal(numbers[entry.Key], entry.Value.Code));
        Assert.All("KEY_A KEY_L KEY_Q KEY_P KEY_Z KEY_M".Split(' '), name => Assert.True(InputCode.IsLetter((ushort)numbers[name]), name));
        Assert.All("KEY_ENTER KEY_LEFTCTRL KEY_SPACE KEY_ESC BTN_SOUTH".Split(' '), name => Assert.False(InputCode.IsLetter((ushort)numbers[name]), name));
    }

    [Theory]
    [InlineData("BTN_SOUTH", 1, 0x130)]
    [InlineData("abs_hat0y", 3, 0x11)]
    [InlineData("KEY:30", 1, 30)]
    [InlineData("abs:40", 3, 40)]
    public void TryParse_OfANameOrNumber_FindsIt(string text, int type, int code)
    {
        Assert.True(InputCode.TryParse(text, out var found));
        Assert.Equal(((ushort)type, (ushort)code), found);
        Assert.True(InputCode.TryParse(InputCode.Name(found.Type, found.Code), out var again));
        Assert.Equal(found, again);
    }

    [Theory]
    [InlineData("")]
    [InlineData("BTN_NORTHWEST")]
    [InlineData("KEY:")]
    [InlineData("KEY:-1")]
    [InlineData("KEY:70000")]
    [InlineData("FOO:1")]
    public void TryParse_OfAnythingElse_DoesNot(string text) => Assert.False(InputCode.TryParse(text, out _));

    private static int Number(string text) => text.StartsWith("0x", StringComparison.Ordinal)
        ? int.Parse(text[2..], NumberStyles.HexNumber, CultureInfo.InvariantCulture)
        : int.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^#define\s+(\w+)\s+(0x[0-9a-f]+|\d+)(\s|$)")]
    private static partial Regex Definition();
}
