using Tarry.Reports.Figures;

namespace Tarry.Reports.Tests.Figures;

public sealed class ScaleTests
{
    [Theory]
    [InlineData(0, 100)]
    [InlineData(5, 150)]
    [InlineData(10, 200)]
    [InlineData(12, 200)]
    [InlineData(-1, 100)]
    public void At_LinearScale_IsProportionalAndKeptInside(double value, double place) =>
        Assert.Equal(place, Scale.Linear(0, 10, 100, 200).At(value), 1e-9);

    [Fact]
    public void At_LogarithmicScale_PutsTheGeometricMeanInTheMiddle() =>
        Assert.Equal(50, Scale.Logarithmic(1, 100, 0, 100).At(10), 1e-9);
}
