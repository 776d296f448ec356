using Tarry.Imports.DelimitedText;
using Reading = Tarry.Imports.DelimitedText.CellNumbers.Reading;

namespace Tarry.Imports.Tests.DelimitedText;

public class CellNumbersTests
{
    // Arithmetic by hand: 1 ms = 1,000,000 ns.
    [Theory]
    [InlineData("8125", TimeUnit.Microseconds, 8_125_000)]
    [InlineData("8.125", TimeUnit.Milliseconds, 8_125_000)]
    [InlineData("0.008125", TimeUnit.Seconds, 8_125_000)]
    [InlineData("8125000", TimeUnit.Nanoseconds, 8_125_000)]
    [InlineData("8.125e3", TimeUnit.Microseconds, 8_125_000)]
    [InlineData(" 0.1 ", TimeUnit.Microseconds, 100)]
    [InlineData("1700000000000000", TimeUnit.Microseconds, 1_700_000_000_000_000_000)]
    [InlineData("1700000000.123456789", TimeUnit.Seconds, 1_700_000_000_123_456_789)]
    public void ReadNanoseconds_Number_IsExact(string cell, TimeUnit unit, long expected)
    {
        Assert.Equal(Reading.Read, CellNumbers.ReadNanoseconds(cell, unit, false, out var nanoseconds));
        Assert.Equal(expected, nanoseconds);
    }

    [Fact]
    public void ReadNanoseconds_FinerThanANanosecond_IsRoundedAndSaysSo()
    {
        Assert.Equal(Reading.Rounded, CellNumbers.ReadNanoseconds("0.30000000000000004", TimeUnit.Milliseconds, false, out var nanoseconds));
        Assert.Equal(300_000, nanoseconds);
    }

    [Theory]
    [InlineData("8,125", true, Reading.Read)]
    [InlineData("8,125", false, Reading.NotANumber)]
    [InlineData("8.125", true, Reading.NotANumber)]
    [InlineData("1.234,5", true, Reading.NotANumber)]
    [InlineData("", false, Reading.Empty)]
    [InlineData("NA", false, Reading.Empty)]
    [InlineData("NaN", false, Reading.NotANumber)]
    [InlineData("inf", false, Reading.NotANumber)]
    [InlineData("Infinity", false, Reading.NotANumber)]
    [InlineData("0x10", false, Reading.NotANumber)]
    [InlineData("12 ms", false, Reading.NotANumber)]
    [InlineData("٣", false, Reading.NotANumber)]
    [InlineData("1e300", false, Reading.OutOfRange)]
    [InlineData("99999999999999999999", false, Reading.OutOfRange)]
    public void ReadNanoseconds_AnyCell_IsToldApart(string cell, bool decimalComma, object expected) =>
        Assert.Equal(expected, CellNumbers.ReadNanoseconds(cell, TimeUnit.Microseconds, decimalComma, out _));

    [Theory]
    [InlineData("7", Reading.Read)]
    [InlineData("7.0", Reading.Read)]
    [InlineData("7.5", Reading.NotANumber)]
    [InlineData("-1", Reading.OutOfRange)]
    [InlineData("101", Reading.OutOfRange)]
    [InlineData("99999999999999999999999999999999", Reading.OutOfRange)]
    public void ReadWhole_AnyCell_IsToldApart(string cell, object expected) =>
        Assert.Equal(expected, CellNumbers.ReadWhole(cell, false, 0, 100, out _));
}
