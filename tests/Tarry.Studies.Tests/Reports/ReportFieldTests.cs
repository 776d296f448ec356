using Tarry.Studies.Reports;

namespace Tarry.Studies.Tests.Reports;

/// <summary>Values worked out by hand from the bit numbering of HID 1.11, 8.4: least significant bit first.</summary>
public class ReportFieldTests
{
    private static readonly ReportField Field = new()
    {
        Column = "x",
        Endpoint = 0x81,
        ReportId = null,
        BitOffset = 0,
        BitSize = 8,
        LogicalMinimum = -127,
        LogicalMaximum = 127,
        Usages = [new UsageRange(1, 0x30, 0x30)],
    };

    // Bytes 0x34 0x12 0x80: bits from offset 4 are 3, 2, 1, 0, 8.
    [Theory]
    [InlineData(0, 8, 0, 255, 0x34)]
    [InlineData(4, 8, 0, 255, 0x23)]
    [InlineData(4, 12, 0, 4095, 0x123)]
    [InlineData(0, 24, 0, 16777215, 0x801234)]
    [InlineData(0, 24, -8388608, 8388607, 0x801234 - 0x1000000)]
    [InlineData(23, 1, 0, 1, 1)]
    [InlineData(23, 1, -1, 0, -1)]
    [InlineData(16, 8, -127, 127, -128)]
    public void ValueIn_PackedBits_AreReadFromTheLeastSignificant(int offset, int size, long minimum, long maximum, long value) =>
        Assert.Equal(value, (Field with { BitOffset = offset, BitSize = size, LogicalMinimum = minimum, LogicalMaximum = maximum }).ValueIn([0x34, 0x12, 0x80]));

    [Fact]
    public void ValueIn_ThirtyTwoBitsOverFiveBytes_IsWhole() =>
        Assert.Equal(0x89ABCDEFL, (Field with { BitOffset = 4, BitSize = 32, LogicalMinimum = 0, LogicalMaximum = uint.MaxValue }).ValueIn([0xF0, 0xDE, 0xBC, 0x9A, 0x08]));

    [Fact]
    public void ValueIn_NullStateArrayAndShortReport_AreToldApart()
    {
        var hat = Field with { BitSize = 4, LogicalMinimum = 0, LogicalMaximum = 7, HasNullState = true };
        var array = Field with { IsArray = true, LogicalMinimum = 1, LogicalMaximum = 3, Usages = [new UsageRange(1, 0x81, 0x81), new UsageRange(1, 0x90, 0x91)] };

        Assert.Equal(7, hat.ValueIn([0x07]));
        Assert.Null(hat.ValueIn([0x08]));
        Assert.Equal(8, (hat with { HasNullState = false }).ValueIn([0x08]));
        Assert.Equal([null, 0x81, 0x90, 0x91, null], Enumerable.Range(0, 5).Select(value => array.ValueIn([(byte)value])));
        Assert.Null(hat.ValueIn([]));
    }

    [Fact]
    public void Log_OfManyReports_KeepsEachAndSortsByTime()
    {
        var log = new ReportLog();
        for (var index = 0; index < 200_000; index++)
        {
            log.Add(index ^ 1, index % 3, BitConverter.GetBytes(index).AsSpan(0, index % 5));
        }

        var selected = log.Select(endpoint => endpoint != 2, tick => 10 * tick);

        Assert.False(log.IsInOrder);
        Assert.True(selected.IsInOrder);
        Assert.Equal(133_334, selected.Count);
        Assert.Equal(BitConverter.GetBytes(123_456).AsSpan(0, 123_456 % 5), log.Data(123_456));
        Assert.Throws<ArgumentOutOfRangeException>(() => log.Tick(200_000));
    }
}
