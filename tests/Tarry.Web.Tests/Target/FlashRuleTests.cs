using Tarry.Web.Target;

namespace Tarry.Web.Tests.Target;

/// <summary>Against WCAG 2.2, definition of "general flash and red flash thresholds": three flashes in any second, or 25 % of 341 x 256 pixels.</summary>
public class FlashRuleTests
{
    [Fact]
    public void LargestArea_IsAQuarterOfTheBlockThatTheStandardNames() => Assert.Equal(21_824, FlashRule.LargestArea);

    [Theory]
    [InlineData(70, 15)]
    [InlineData(100, 11)]
    [InlineData(250, 5)]
    [InlineData(333, 4)]
    [InlineData(334, 3)]
    [InlineData(500, 3)]
    [InlineData(501, 2)]
    [InlineData(1001, 1)]
    public void FlashesInASecond_LitWhilePressed_AreThePressesThatFitWithBothEnds(double intervalMs, int flashes) =>
        Assert.Equal(flashes, FlashRule.FlashesInASecond(intervalMs, changesAtEachPress: false));

    [Theory]
    [InlineData(70, 8)]
    [InlineData(250, 3)]
    [InlineData(1001, 1)]
    public void FlashesInASecond_ChangedAtEachPress_AreHalfAsMany(double intervalMs, int flashes) =>
        Assert.Equal(flashes, FlashRule.FlashesInASecond(intervalMs, changesAtEachPress: true));

    [Theory]
    [InlineData(147, 148, 15, true)]
    [InlineData(148, 148, 15, false)]
    [InlineData(341, 64, 15, true)]
    [InlineData(341, 65, 15, false)]
    [InlineData(341, 65, 4, false)]
    [InlineData(1024, 768, 3, true)]
    public void Allows_SizeAndRate_EitherSmallOrSlow(double width, double height, int flashes, bool allowed) =>
        Assert.Equal(allowed, FlashRule.Allows(width, height, flashes));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void FlashesInASecond_NoInterval_IsRefused(double intervalMs) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FlashRule.FlashesInASecond(intervalMs, changesAtEachPress: false));
}
