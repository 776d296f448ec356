using Tarry.Reports.Wording;

namespace Tarry.Reports.Tests.Wording;

public sealed class ListingTests
{
    [Theory]
    [InlineData(0, "")]
    [InlineData(1, "a")]
    [InlineData(2, "a and b")]
    [InlineData(3, "a, b and c")]
    [InlineData(6, "a, b, c, d, e and f")]
    [InlineData(7, "a, b, c, d, e and 2 others")]
    [InlineData(24, "a, b, c, d, e and 19 others")]
    public void And_Names_ReadAsAList(int count, string text)
    {
        string[] names = [.. Enumerable.Range(0, count).Select(index => ((char)('a' + index)).ToString())];
        Assert.Equal(text, Listing.And(names).Replace('\u00A0', ' '));
    }
}
