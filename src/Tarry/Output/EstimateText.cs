using Tarry.Metrology;
using Tarry.Reports.Wording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>Estimates as cells of a terminal's table.</summary>
internal static class EstimateText
{
    /// <summary>Value and interval, a bound, or what is lacking.</summary>
    public static string Of<T>(EstimateOutcome<T> outcome, Func<T, double> number, bool signed = false)
        where T : struct, IComparable<T>
    {
        switch (outcome)
        {
            case Estimate<T> estimate:
                var decimals = Decimals(estimate, number);
                string In(T value) => Numbers.Fixed(number(value), decimals, signed);
                return $"{In(estimate.Value)} ({In(estimate.Interval.Low)} to {In(estimate.Interval.High)})";
            case NotEnough<T> lack:
                return Invariant($"{lack.Have} of {lack.Need} {lack.Of}");
            case AtMost<T> bound:
                return $"at most {Numbers.Fixed(number(bound.Bound), 2)}";
            default:
                throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "An outcome without words.");
        }
    }

    /// <summary>The value alone with the digits that its interval supports, a bound, or a question mark.</summary>
    public static string Value<T>(EstimateOutcome<T> outcome, Func<T, double> number, int mostDecimals = 3)
        where T : struct, IComparable<T> => outcome switch
        {
            Estimate<T> estimate => Numbers.Fixed(number(estimate.Value), Decimals(estimate, number, mostDecimals)),
            AtMost<T> bound => $"at most {Numbers.Fixed(number(bound.Bound), 2)}",
            _ => "?",
        };

    private static int Decimals<T>(Estimate<T> estimate, Func<T, double> number, int most = 3)
        where T : struct, IComparable<T> =>
        Numbers.Decimals(number(estimate.Interval.High) - number(estimate.Interval.Low), most);
}
