using Tarry.Findings.Conditions;
using Tarry.Reports.Figures;

namespace Tarry.Reports.Tests.Figures;

public sealed class SharedTailTests
{
    // An exponential density has the share exp(-x / scale) beyond x, so its 99.5 % quantile is scale times ln 200.
    private static readonly DensityCurve Exponential = Curve(0, 0.001, 40_000, x => Math.Exp(-x / 2) / 2);

    private static readonly DensityCurve Block = Curve(0, 0.001, 10_001, _ => 0.1);

    [Theory]
    [InlineData(0)]
    [InlineData(1.2345)]
    [InlineData(8)]
    public void ShareBeyond_Exponential_FallsAsItsFormula(double x) =>
        Assert.Equal(Math.Exp(-x / 2), SharedTail.ShareBeyond(Exponential, x), 1e-6);

    [Fact]
    public void CutMs_Exponential_IsItsQuantile() => Assert.Equal(2 * Math.Log(200), SharedTail.CutMs([Exponential])!.Value, 1e-4);

    [Fact]
    public void CutMs_Block_NeedsNoBreak() => Assert.Null(SharedTail.CutMs([Block]));

    [Fact]
    public void CutMs_NoCurves_NeedsNoBreak() => Assert.Null(SharedTail.CutMs([]));

    private static DensityCurve Curve(double from, double step, int count, Func<double, double> density) =>
        new(from, step, [.. Enumerable.Range(0, count).Select(index => density(from + (index * step)))], 0.1);
}
