using Tarry.Statistics.Circles;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>The mean turn of a condition over angle, and the circle of least squares through it.</summary>
/// <param name="Distances">How far the stick reaches from the circle's centre in each of 72 equal sectors, counter-clockwise from right; in per cent of half the range.</param>
/// <param name="Low">The low end of each distance's interval; as the distance where one turn gives none.</param>
/// <param name="High">The high end.</param>
/// <param name="Circle">The circle.</param>
/// <param name="Turns">How many turns, or pairs of turns.</param>
/// <param name="Sessions">Of how many sessions.</param>
/// <param name="Level">The level of the intervals, each by itself.</param>
public sealed record StickRose(IReadOnlyList<double> Distances, IReadOnlyList<double> Low, IReadOnlyList<double> High, Circle Circle, int Turns, int Sessions, double Level);
