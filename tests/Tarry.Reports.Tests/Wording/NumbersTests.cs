using Tarry.Reports.Wording;

namespace Tarry.Reports.Tests.Wording;

public sealed class NumbersTests
{
    [Theory]
    [InlineData(0, 3)]
    [InlineData(0.004, 3)]
    [InlineData(0.04, 3)]
    [InlineData(0.23, 2)]
    [InlineData(1, 1)]
    [InlineData(2.3, 1)]
    [InlineData(23, 0)]
    [InlineData(2300, 0)]
    public void Decimals_OfAWidth_LeaveTwoDigitsOfIt(double width, int decimals) => Assert.Equal(decimals, Numbers.Decimals(width));

    [Theory]
    [InlineData(-1.25, 2, "\u22121.25")]
    [InlineData(-0.001, 2, "0.00")]
    [InlineData(-0.0, 1, "0.0")]
    [InlineData(1234.56, 1, "1,234.6")]
    [InlineData(12, 0, "12")]
    public void Fixed_Number_HasATrueMinusAndNoSignedZero(double value, int decimals, string text) =>
        Assert.Equal(text, Numbers.Fixed(value, decimals));

    [Theory]
    [InlineData(1.25, "+1.25")]
    [InlineData(-1.25, "\u22121.25")]
    [InlineData(0.001, "0.00")]
    public void Fixed_WithPlus_SignsAllButZero(double value, string text) => Assert.Equal(text, Numbers.Fixed(value, 2, withPlus: true));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Fixed_NotFinite_IsRefused(double value) => Assert.Throws<ArgumentOutOfRangeException>(() => Numbers.Fixed(value, 2));

    [Theory]
    [InlineData(0, "0\u00A0trials")]
    [InlineData(1, "1\u00A0trial")]
    [InlineData(6000, "6,000\u00A0trials")]
    public void Count_Number_TakesItsPlural(long count, string text) => Assert.Equal(text, Numbers.Count(count, "trial"));

    [Theory]
    [InlineData(0.95, "95\u00A0%")]
    [InlineData(0.999, "99.9\u00A0%")]
    [InlineData(0.9, "90\u00A0%")]
    public void Level_Fraction_IsAPercentage(double level, string text) => Assert.Equal(text, Numbers.Level(level));

    [Theory]
    [InlineData(0.5, "0.5\u00A0ms")]
    [InlineData(10, "10\u00A0ms")]
    [InlineData(100, "100\u00A0ms")]
    [InlineData(21.6234, "21.623\u00A0ms")]
    public void Milliseconds_Duration_LosesOnlyTrailingZeros(double value, string text) => Assert.Equal(text, Numbers.Milliseconds(value));

    [Theory]
    [InlineData(0.00001, "below\u00A00.0001")]
    [InlineData(0.0042, "0.0042")]
    [InlineData(0.41, "0.410")]
    [InlineData(1, "1.000")]
    public void Probability_Value_IsNeverShownAsZero(double value, string text) => Assert.Equal(text, Numbers.Probability(value));
}
