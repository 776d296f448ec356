using Tarry.Metrology;
using Tarry.Statistics.Planning;

namespace Tarry.Statistics.Tests.Planning;

public class WilliamsDesignTests
{
    // The two properties that E. J. Williams's designs have by definition.
    [Theory]
    [InlineData(2, 2)]
    [InlineData(4, 4)]
    [InlineData(12, 12)]
    [InlineData(3, 6)]
    [InlineData(7, 14)]
    public void Draw_WholeDesign_BalancesPlacesAndNeighbours(int treatments, int rows)
    {
        var orders = WilliamsDesign.Draw(treatments, rows, new SeededGenerator(4));

        var eachPlace = rows / treatments;
        for (var place = 0; place < treatments; place++)
        {
            Assert.All(orders.GroupBy(order => order[place]), group => Assert.Equal(eachPlace, group.Count()));
        }

        var neighbours = orders.SelectMany(order => order.Zip(order.Skip(1))).GroupBy(pair => pair).ToList();
        Assert.Equal(treatments * (treatments - 1), neighbours.Count);
        Assert.All(neighbours, group => Assert.Equal(eachPlace, group.Count()));
    }

    [Fact]
    public void Draw_FewerOrdersThanTheDesign_NoPairOfNeighboursComesTwice()
    {
        var orders = WilliamsDesign.Draw(12, 4, new SeededGenerator(8));

        Assert.All(orders, order => Assert.Equal(Enumerable.Range(0, 12), order.Order()));
        Assert.All(orders.SelectMany(order => order.Zip(order.Skip(1))).GroupBy(pair => pair), group => Assert.Single(group));
    }

    [Fact]
    public void Draw_BySeed_IsTheSameAndElseAnother()
    {
        static string Drawn(ulong seed) => string.Join('|', WilliamsDesign.Draw(6, 5, new SeededGenerator(seed)).Select(order => string.Join(',', order)));
        Assert.Equal(Drawn(1), Drawn(1));
        Assert.NotEqual(Drawn(1), Drawn(2));
    }

    [Fact]
    public void Draw_OneTreatment_IsItAlone() => Assert.Equal([[0], [0]], WilliamsDesign.Draw(1, 2, new SeededGenerator(1)));
}
