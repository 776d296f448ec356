using Tarry.Metrology;

namespace Tarry.Statistics.Planning;

/// <summary>Orders in which every treatment comes once, takes every place equally often, and follows every other equally often, so that what one leaves behind falls on all alike.</summary>
/// <remarks>
/// E. J. Williams, Austral. J. Sci. Res. A 2, 1949: rows of 0, 1, n-1, 2, n-2 ... raised by 0 to n-1; for odd n also their
/// reverses. With fewer rows than the design has, no ordered pair of neighbours comes more often than the design allows:
/// once, or twice for odd n.
/// </remarks>
public static class WilliamsDesign
{
    /// <summary>Orders with treatments and rows drawn at random; beyond one whole design another one is drawn.</summary>
    /// <param name="treatments">How many treatments, 1 or more.</param>
    /// <param name="orders">How many orders, 0 or more.</param>
    /// <param name="random">What draws them.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no treatment, or a negative number of orders.</exception>
    public static IReadOnlyList<IReadOnlyList<int>> Draw(int treatments, int orders, SeededGenerator random)
    {
        ArgumentNullException.ThrowIfNull(random);
        Argument.RequireAtLeast(treatments, 1, nameof(treatments), "Declare a condition.");
        Argument.RequireAtLeast(orders, 0, nameof(orders), "Plan a sitting.");
        var drawn = new List<IReadOnlyList<int>>(orders);
        while (drawn.Count < orders)
        {
            var rows = Rows(treatments);
            Shuffle(rows, random);
            var names = Enumerable.Range(0, treatments).ToArray();
            Shuffle(names, random);
            drawn.AddRange(rows.Take(orders - drawn.Count).Select(row => Array.ConvertAll(row, treatment => names[treatment])));
        }

        return drawn;
    }

    private static int[][] Rows(int count)
    {
        var first = new int[count];
        for (var place = 1; place < count; place++)
        {
            first[place] = place % 2 == 1 ? (place + 1) / 2 : count - (place / 2);
        }

        var rows = Enumerable.Range(0, count).Select(raise => Array.ConvertAll(first, treatment => (treatment + raise) % count)).ToList();
        return count % 2 == 0 || count == 1 ? [.. rows] : [.. rows, .. rows.Select(row => Enumerable.Reverse(row).ToArray())];
    }

    // R. Durstenfeld, Commun. ACM 7, 1964.
    private static void Shuffle<T>(T[] items, SeededGenerator random)
    {
        for (var last = items.Length - 1; last > 0; last--)
        {
            var other = random.NextInt32(last + 1);
            (items[last], items[other]) = (items[other], items[last]);
        }
    }
}
