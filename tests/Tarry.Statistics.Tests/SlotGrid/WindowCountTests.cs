using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Statistics.Tests.SlotGrid;

public sealed class WindowCountTests
{
    [Fact]
    public void FullestWindow_InLinearTime_IsThatOfSortedValuesWithinABin()
    {
        var random = new SeededGenerator(3);
        for (var run = 0; run < 50; run++)
        {
            // A block of the window's width with outliers, as the waits of a right model are.
            var values = Enumerable.Range(0, 500)
                .Select(i => i % 20 == 0 ? 20 * random.NextDouble() : 5 + (4.1 * random.NextDouble()))
                .ToArray();
            var sorted = (double[])values.Clone();
            Array.Sort(sorted);
            var expected = FullestWindow.OfSorted(sorted, 4.1);
            var found = new WindowCount(values.Length).Of(values, 4.1, -1, 25);

            // A bin is 1/256 of the window and holds about two of these values.
            Assert.InRange(found.Count, expected.Count - 4, expected.Count);
            Assert.Equal(found.Count, values.Count(value => value >= found.Start - 1e-9 && value <= found.Start + 4.1 + 1e-9));
        }
    }
}
