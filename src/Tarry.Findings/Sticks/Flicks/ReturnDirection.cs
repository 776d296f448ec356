namespace Tarry.Findings.Sticks.Flicks;

/// <summary>Where the stick comes to rest after release from one of eight directions, in per cent of half the range.</summary>
/// <param name="Degrees">The direction, counter-clockwise from right.</param>
/// <param name="Releases">How many releases.</param>
/// <param name="X">The mean rest position.</param>
/// <param name="Y">The y.</param>
/// <param name="HalfWidthX">Half the width of its interval, over releases; null for fewer than two.</param>
/// <param name="HalfWidthY">The y.</param>
public sealed record ReturnDirection(double Degrees, int Releases, double X, double Y, double? HalfWidthX, double? HalfWidthY);
