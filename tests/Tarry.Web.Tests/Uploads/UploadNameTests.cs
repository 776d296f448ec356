using Tarry.Web.Uploads;

namespace Tarry.Web.Tests.Uploads;

public class UploadNameTests
{
    [Theory]
    [InlineData("monday.csv", "monday.csv")]
    [InlineData("../../etc/passwd", "passwd")]
    [InlineData("..\\..\\windows\\win.ini", "win.ini")]
    [InlineData("/absolute/path.vcd", "path.vcd")]
    [InlineData("..", "unnamed")]
    [InlineData("", "unnamed")]
    [InlineData("a/..", "unnamed")]
    [InlineData(".hidden.csv", "hidden.csv")]
    [InlineData("<script>alert(1)<script>.csv", "_script_alert(1)_script_.csv")]
    [InlineData("a\u0000b\n.csv", "a_b_.csv")]
    [InlineData("invoice\u202Egpj.csv", "invoice_gpj.csv")]
    [InlineData("C:stream.csv", "C_stream.csv")]
    [InlineData("M\u00fcnchen \U0001F600.csv", "M\u00fcnchen \U0001F600.csv")]
    public void Of_AnyName_IsAPlainNameOfAFile(string given, string name) => Assert.Equal(name, UploadName.Of(given));

    [Fact]
    public void Of_ALongName_KeepsItsEnding()
    {
        var name = UploadName.Of(new string('x', 300) + ".pcapng");
        Assert.Equal(100, name.Length);
        Assert.EndsWith(".pcapng", name, StringComparison.Ordinal);
    }
}
