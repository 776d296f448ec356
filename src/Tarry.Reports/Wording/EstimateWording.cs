using Tarry.Metrology;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Wording;

/// <summary>Estimates as text: value, interval, level, sessions and trials, always together in a sentence.</summary>
public static class EstimateWording
{
    /// <summary>The number alone, with the digits that its interval supports.</summary>
    public static string Value<T>(Estimate<T> estimate, Quantity<T> quantity)
        where T : struct, IComparable<T> =>
        Fixed(quantity.InUnit(estimate.Value), Decimals(estimate, quantity), quantity.HasSign);

    /// <summary>The interval without its unit: <c>6.10 to 6.33</c>, or <c>tied at 6.000</c> where it has no width.</summary>
    public static string Bounds<T>(Estimate<T> estimate, Quantity<T> quantity)
        where T : struct, IComparable<T>
    {
        var decimals = Decimals(estimate, quantity);
        var low = Fixed(quantity.InUnit(estimate.Interval.Low), decimals, quantity.HasSign);
        var high = Fixed(quantity.InUnit(estimate.Interval.High), decimals, quantity.HasSign);
        return estimate.Interval.Low.CompareTo(estimate.Interval.High) == 0
            ? $"tied at{NoBreakSpace}{low}"
            : $"{low}{NoBreakSpace}to{NoBreakSpace}{high}";
    }

    /// <summary>The whole claim: <c>6.21 ms (95 % interval 6.10 to 6.33; 4 sessions, 6,000 trials)</c>.</summary>
    public static string Claim<T>(Estimate<T> estimate, Quantity<T> quantity)
        where T : struct, IComparable<T> =>
        $"{Value(estimate, quantity)}{NoBreakSpace}{quantity.Unit} ({Evidence(estimate, quantity)})";

    /// <summary>The claim, or what is lacking for one.</summary>
    public static string ClaimOrLack<T>(EstimateOutcome<T> outcome, Quantity<T> quantity)
        where T : struct, IComparable<T> =>
        outcome switch
        {
            Estimate<T> estimate => Claim(estimate, quantity),
            AtMost<T> bound => $"{Bound(bound, quantity)} (one-sided {Level(bound.Level)}; {Basis(bound.Sessions, bound.Trials)})",
            NotEnough<T> lack => Lack(lack),
            _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "An outcome without words."),
        };

    /// <summary>A bound from above: <c>at most 0.21 ms</c>.</summary>
    public static string Bound<T>(AtMost<T> bound, Quantity<T> quantity)
        where T : struct, IComparable<T> =>
        $"at most{NoBreakSpace}{Fixed(quantity.InUnit(bound.Bound), 2)}{NoBreakSpace}{quantity.Unit}";

    /// <summary>What is lacking: <c>not enough data: 1 of 2 sessions</c>.</summary>
    public static string Lack<T>(NotEnough<T> lack)
        where T : struct, IComparable<T>
    {
        var noun = lack.Need == 1 && lack.Of.EndsWith('s') ? lack.Of[..^1] : lack.Of;
        return $"not enough data: {Whole(lack.Have)}{NoBreakSpace}of{NoBreakSpace}{Whole(lack.Need)} {noun}";
    }

    /// <summary>Interval, level, sessions and trials, without the value.</summary>
    public static string Evidence<T>(Estimate<T> estimate, Quantity<T> quantity)
        where T : struct, IComparable<T>
    {
        var scope = estimate.Sessions == 1 ? ", within this sitting only" : "";
        return $"{Level(estimate.Level)} interval {Bounds(estimate, quantity)}{scope}; {Basis(estimate.Sessions, estimate.Trials)}";
    }

    /// <summary>Sessions and trials: <c>4 sessions, 6,000 trials</c>.</summary>
    public static string Basis(int sessions, long trials) => $"{Count(sessions, "session")}, {Count(trials, "trial")}";

    private static int Decimals<T>(Estimate<T> estimate, Quantity<T> quantity)
        where T : struct, IComparable<T> =>
        Numbers.Decimals(quantity.InUnit(estimate.Interval.High) - quantity.InUnit(estimate.Interval.Low), quantity.MostDecimals);
}
