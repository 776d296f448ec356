namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>One point of a map, in per cent of half the range, sizes of either side together.</summary>
/// <param name="Without">What is said without the layer.</param>
/// <param name="With">What is said with it.</param>
/// <param name="Low">The low end of its interval.</param>
/// <param name="High">The high end.</param>
public sealed record MapPoint(double Without, double With, double Low, double High);
