using Tarry.Imports.DelimitedText;

namespace Tarry.Imports.Tests.DelimitedText;

public class FactorTextTests
{
    // OWASP, "CSV Injection": the signs that a spreadsheet program takes for the beginning of a formula.
    [Theory]
    [InlineData("=cmd|' /C calc'!A0")]
    [InlineData("'=1")]
    [InlineData("''-1")]
    [InlineData("'quoted'")]
    [InlineData("'")]
    [InlineData("@home")]
    [InlineData("Quill 2")]
    public void Clean_OfWhatToCellWrote_IsTheLevelAgain(string level)
    {
        var cell = FactorText.ToCell(level);
        Assert.DoesNotContain(cell[0], "=+-@\t\r");
        Assert.Equal(level, FactorText.Clean(cell.StartsWith('"') ? cell[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal) : cell).ToString());
    }
}
