using Tarry.Metrology;
using Tarry.Statistics.Planning;

namespace Tarry.Findings.Plans;

/// <summary>Draws the order of the conditions in every sitting: each sitting is a block that holds them all, the reference at a drawn place like any other.</summary>
/// <remarks>
/// The reference is not put first or last: it would then meet the cold or the warm bench in every sitting, and every
/// difference from it would carry that.
/// </remarks>
public static class RunOrder
{
    /// <summary>The order.</summary>
    /// <param name="conditions">The conditions, the reference among them, at least one.</param>
    /// <param name="sittings">How many sittings.</param>
    /// <param name="taken">Names of sittings that the study has already.</param>
    /// <param name="seed">The seed; the same gives the same order.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no condition, or the number of sittings is negative.</exception>
    public static IReadOnlyList<OrderedSitting> Draw(IReadOnlyList<string> conditions, int sittings, IReadOnlyCollection<string> taken, uint seed)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentNullException.ThrowIfNull(taken);
        var random = new SeededGenerator(seed);
        var orders = WilliamsDesign.Draw(conditions.Count, sittings, random);
        var names = Enumerable.Range(1, int.MaxValue - 1).Select(number => $"sitting-{number}").Where(name => !taken.Contains(name)).Take(sittings);
        return [.. names.Zip(orders, (name, order) => new OrderedSitting(
            name,
            [.. order.Select((condition, index) => new OrderedRun(index + 1, conditions[condition], SeedOfRun(random)))]))];
    }

    // A session's press intervals are its own; 0 is no seed of the rig.
    private static uint SeedOfRun(SeededGenerator random) => 1 + (uint)random.NextInt32(999_999_999);
}
