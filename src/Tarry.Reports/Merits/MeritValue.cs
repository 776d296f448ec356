using Tarry.Metrology;
using Tarry.Reports.Documents;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Merits;

/// <summary>What a condition has of a figure of merit: as text, and as numbers to sort and to draw by.</summary>
/// <param name="Text">The value, or that there is none.</param>
/// <param name="Detail">Its interval, or what is lacking.</param>
public sealed record MeritValue(string Text, string Detail)
{
    /// <summary>The value in the figure's unit; null where there is none.</summary>
    public double? Value { get; private init; }

    /// <summary>The low end of its interval; null where there is no value.</summary>
    public double? Low { get; private init; }

    /// <summary>The high end of its interval, or what it is at most; null where nothing bounds it.</summary>
    public double? High { get; private init; }

    /// <summary>Sessions and trials behind it; empty where there is no value.</summary>
    public string Basis { get; private init; } = "";

    /// <summary>Whether its interval holds within one sitting only.</summary>
    public bool IsOpen { get; private init; }

    /// <summary>Whether the intervals of two values have a part in common, so that the figure alone does not tell them apart; also where one has no interval.</summary>
    public bool Overlaps(MeritValue other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return !(Low > other.High) && !(other.Low > High);
    }

    /// <summary>No value, and why.</summary>
    public static MeritValue None(string text, string detail = "") => new(text, detail);

    internal static MeritValue Of<T>(EstimateOutcome<T> outcome, Quantity<T> quantity)
        where T : struct, IComparable<T>
    {
        var cell = TableCell.Of(outcome, quantity);
        return outcome switch
        {
            Estimate<T> estimate => new(cell.Text, cell.Detail)
            {
                Value = quantity.InUnit(estimate.Value),
                Low = quantity.InUnit(estimate.Interval.Low),
                High = quantity.InUnit(estimate.Interval.High),
                Basis = EstimateWording.Basis(estimate.Sessions, estimate.Trials),
                IsOpen = estimate.Sessions == 1,
            },
            AtMost<T> bound => new(cell.Text, cell.Detail) { High = quantity.InUnit(bound.Bound), Basis = EstimateWording.Basis(bound.Sessions, bound.Trials) },
            _ => None(cell.Text, cell.Detail),
        };
    }
}
