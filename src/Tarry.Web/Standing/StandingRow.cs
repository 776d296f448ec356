using Tarry.Reports.Figures;
using Tarry.Reports.Merits;

namespace Tarry.Web.Standing;

/// <summary>A row of the standing.</summary>
/// <param name="Ranked">The condition and its rank by mean.</param>
/// <param name="Sorted">What it has of the figure that the standing is sorted by.</param>
/// <param name="Cells">What it has of each column's figure.</param>
/// <param name="OverlapsAbove">Whether the interval of the figure that is sorted by overlaps with that of the row above.</param>
/// <param name="IsTied">Whether it shares its tie group by mean with another row.</param>
/// <param name="Strip">Its interval, drawn.</param>
/// <param name="Cautions">The kinds of its cautions, in words.</param>
public sealed record StandingRow(
    RankedRow Ranked,
    MeritValue Sorted,
    IReadOnlyList<MeritValue> Cells,
    bool OverlapsAbove,
    bool IsTied,
    string Strip,
    IReadOnlyList<string> Cautions)
{
    /// <summary>Its tie group by mean; 0 where it has none.</summary>
    public int Group => Ranked.Rank?.Group ?? 0;
}
