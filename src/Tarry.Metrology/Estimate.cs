namespace Tarry.Metrology;

/// <summary>What a computation could say about a quantity: an <see cref="Estimate{T}"/>, <see cref="NotEnough{T}"/>, or, for a few quantities that say so, <see cref="AtMost{T}"/>.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public abstract record EstimateOutcome<T>
    where T : struct, IComparable<T>;

/// <summary>A value with its interval, its confidence level, how it was found and from how much data.</summary>
/// <param name="Value">The estimate.</param>
/// <param name="Interval">Its interval.</param>
/// <param name="Level">The confidence level, such as 0.95.</param>
/// <param name="Method">The name of the method, as in <c>docs/methods/</c>.</param>
/// <param name="Trials">How many trials it rests on.</param>
/// <param name="Sessions">How many sessions it rests on: the unit of inference.</param>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record Estimate<T>(T Value, Interval<T> Interval, double Level, string Method, int Trials, int Sessions)
    : EstimateOutcome<T>
    where T : struct, IComparable<T>;

/// <summary>The data do not suffice. Never a NaN, never a zero.</summary>
/// <param name="Have">How many there are.</param>
/// <param name="Need">How many it takes.</param>
/// <param name="Of">Of what: <c>trials</c>, <c>sessions</c>, <c>responses</c>.</param>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record NotEnough<T>(int Have, int Need, string Of) : EstimateOutcome<T>
    where T : struct, IComparable<T>;

/// <summary>The data bound a quantity from above only: what was seen lies at or below zero, where the quantity cannot be.</summary>
/// <param name="Bound">What it does not exceed, at the level.</param>
/// <param name="Level">The confidence level, one-sided.</param>
/// <param name="Method">The name of the method, as in <c>docs/methods/</c>.</param>
/// <param name="Trials">How many trials it rests on.</param>
/// <param name="Sessions">How many sessions it rests on.</param>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record AtMost<T>(T Bound, double Level, string Method, int Trials, int Sessions) : EstimateOutcome<T>
    where T : struct, IComparable<T>;
