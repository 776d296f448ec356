using Tarry.Findings;
using Tarry.Reports.Merits;
using Tarry.Reports.Tests;
using Tarry.Web.Standing;

namespace Tarry.Web.Tests.Standing;

public sealed class StandingQueryTests
{
    private static readonly FindingsDocument Document = Samples.TwelveConditions();

    [Theory]
    [InlineData("standing")]
    [InlineData("standing?sort=p99")]
    [InlineData("standing?sort=-mean&link=usb")]
    [InlineData("standing?sort=-late&device=Model%20quill-usb&link=usb&show=mean,missed")]
    public void Address_OfWhatWasParsed_IsTheSame(string address) => Assert.Equal(address, Uri.UnescapeDataString(Parse(address).Address).Replace(" ", "%20", StringComparison.Ordinal));

    [Theory]
    [InlineData("standing?sort=speed&colour=red&link=")]
    [InlineData("standing?utm=1")]
    public void Parse_OfWhatThereIsNot_LeavesItAside(string address) => Assert.Equal("standing", Parse(address).Address);

    [Fact]
    public void SortedBy_TheSameAgain_TurnsTheOrderRound()
    {
        var query = Parse("standing").SortedBy(FiguresOfMerit.Find("p95")!);
        Assert.False(query.GreatestFirst);
        Assert.True(query.SortedBy(query.Sort).GreatestFirst);
        Assert.False(query.SortedBy(query.Sort).SortedBy(query.Sort).GreatestFirst);
    }

    [Fact]
    public void Make_SortedByP99_StandsInThatOrderWithTheUnknownLast()
    {
        var table = StandingTable.Make(Document, Parse("standing?sort=p99"));
        var values = table.Rows.Select(row => row.Sorted.Value).ToList();
        Assert.Equal(values.OfType<double>().Order(), values.OfType<double>());
        Assert.Null(values[^1]); // the condition of one sitting has too few trials for a p99
        Assert.Equal(12, table.Rows.Count);
        Assert.All(table.Rows.Skip(1).Zip(table.Rows), pair => Assert.Equal(pair.First.Sorted.Overlaps(pair.Second.Sorted), pair.First.OverlapsAbove));
    }

    [Fact]
    public void Make_ByMean_KeepsTheOrderOfTheRanking() =>
        Assert.Equal(Document.Ranking.Select(rank => rank.Id), StandingTable.Make(Document, Parse("standing")).Rows.Select(row => row.Ranked.Condition.Id));

    private static StandingQuery Parse(string address) => StandingQuery.Parse(new Uri(new Uri("http://localhost/"), address), Document);
}
