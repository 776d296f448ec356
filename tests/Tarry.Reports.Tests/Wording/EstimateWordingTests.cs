using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Tests.Wording;

public sealed class EstimateWordingTests
{
    [Fact]
    public void Claim_SeveralSessions_GivesIntervalLevelSessionsAndTrials() => Assert.Equal(
        "6.21 ms (95 % interval 6.10 to 6.32; 4 sessions, 6,000 trials)",
        Spaced(EstimateWording.Claim(Samples.Latency(6.21, 0.11), Quantity.Latency)));

    [Fact]
    public void Claim_OneSession_SaysWithinThisSittingOnly() => Assert.Equal(
        "6.21 ms (95 % interval 6.10 to 6.32, within this sitting only; 1 session, 1 trial)",
        Spaced(EstimateWording.Claim(Samples.Latency(6.21, 0.11, 1, 1), Quantity.Latency)));

    [Fact]
    public void Claim_Difference_CarriesItsSign() => Assert.Equal(
        "\u22121.2 ms (95 % interval \u22122.7 to +0.3; 4 sessions, 12,000 trials)",
        Spaced(EstimateWording.Claim(Samples.Difference(-1.2, 1.5), Quantity.Difference)));

    [Fact]
    public void Bounds_IntervalBelowZero_CarriesTheSign() => Assert.Equal(
        "\u22122.0 to 7.0",
        Spaced(EstimateWording.Bounds(Samples.Latency(2.5, 4.5, 2), Quantity.Latency)));

    [Fact]
    public void Bounds_ZeroWidth_SaysTied() => Assert.Equal(
        "tied at 6.000",
        Spaced(EstimateWording.Bounds(Samples.Latency(6, 0), Quantity.Latency)));

    [Fact]
    public void Claim_Share_IsInPercent() => Assert.Equal(
        "1.20 % (95 % interval 0.96 to 1.50; 4 sessions, 6,000 trials)",
        Spaced(EstimateWording.Claim(Samples.Share(0.012, 0.0096, 0.015), Quantity.Share)));

    [Theory]
    [InlineData(1, 2, "sessions", "not enough data: 1 of 2 sessions")]
    [InlineData(0, 1, "sessions", "not enough data: 0 of 1 session")]
    [InlineData(1500, 3000, "trials", "not enough data: 1,500 of 3,000 trials")]
    public void Lack_NotEnough_SaysHowManyOfHowMany(int have, int need, string of, string text) =>
        Assert.Equal(text, Spaced(EstimateWording.Lack(new NotEnough<Latency>(have, need, of))));

    private static string Spaced(string text) => text.Replace('\u00A0', ' ');
}
