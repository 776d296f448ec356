using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Statistics.Tests.Shapes;

// R 4.2.2, diptest 0.76-0, dip().
public sealed class DipStatisticTests
{
    [Fact]
    public void Dip_SmallSamples_AgreesWithR()
    {
        Close.Absolute(0.05, DipStatistic.Of([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]), 1e-9);
        Close.Absolute(0.25, DipStatistic.Of([1, 1, 1, 4, 4, 4]), 1e-9);
    }

    [Fact]
    public void Dip_PublishedData_AgreesWithR()
    {
        Close.Absolute(0.05125, DipStatistic.Of(PublishedData.Sorted(PublishedData.Michelson)), 1e-9);
        Close.Absolute(0.05, DipStatistic.Of(PublishedData.Sorted(PublishedData.Mavro)), 1e-9);
        Close.Absolute(0.0923810263069, DipStatistic.Of(PublishedData.Sorted(OutsideProgram.R("p(faithful$eruptions)"))), 1e-9);
    }

    // qDiptab at n = 1,000: 95 % of uniform samples lie below 0.0169343970.
    [Fact]
    public void Dip_UniformSamples_ExceedsTheTabledPointInFivePercent()
    {
        var generator = new SeededGenerator(61);
        var above = Enumerable.Range(0, 200).Count(_ => DipStatistic.Of(PublishedData.Sorted([.. Enumerable.Range(0, 1000).Select(_ => generator.NextDouble())])) > 0.0169343970);
        Close.Share(0.05, above, 200);
    }
}
