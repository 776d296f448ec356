using System.Xml.Linq;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Documents;

/// <summary>A cell: what it says, and smaller beneath it what that rests on.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Detail">What stands beneath it; empty for nothing.</param>
/// <param name="IsText">Whether it is words rather than a number.</param>
internal sealed record TableCell(string Text, string Detail = "", bool IsText = false)
{
    private const double UsualLevel = 0.95;

    /// <summary>A number.</summary>
    public static implicit operator TableCell(string text) => FromString(text);

    /// <summary>A number.</summary>
    public static TableCell FromString(string text) => new(text);

    /// <summary>Words.</summary>
    public static TableCell Words(string text, string detail = "") => new(text, detail, IsText: true);

    /// <summary>A value over its interval, or what is lacking. The level is named where it is not 95 %, as captions say.</summary>
    public static TableCell Of<T>(EstimateOutcome<T> outcome, Quantity<T> quantity)
        where T : struct, IComparable<T>
    {
        switch (outcome)
        {
            case Estimate<T> estimate:
                var level = Math.Abs(estimate.Level - UsualLevel) < 1e-9 ? "" : $" at {Numbers.Level(estimate.Level)}";
                return new(EstimateWording.Value(estimate, quantity), EstimateWording.Bounds(estimate, quantity) + level);
            case AtMost<T> bound:
                return new($"at most{Numbers.NoBreakSpace}{Numbers.Fixed(quantity.InUnit(bound.Bound), 2)}", $"one-sided {Numbers.Level(bound.Level)}");
            case NotEnough<T> lack:
                return new("not enough data", EstimateWording.Lack(lack)["not enough data: ".Length..]);
            default:
                throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "An outcome without words.");
        }
    }

    /// <summary>What goes inside the cell.</summary>
    public IEnumerable<XNode> Content()
    {
        yield return new XElement("span", PlainText.Clean(Text));
        if (Detail.Length > 0)
        {
            yield return new XElement("small", PlainText.Clean(Detail));
        }
    }
}
