namespace Tarry.Findings.Sticks.Flicks;

/// <summary>Where the stick comes to rest after release from one of eight directions, in per cent of half the range.</summary>
/// <param name="Degrees">The direction, counter-clockwise from right.</param>
/// <param name="Sessions">How many sessions have such a release.</param>
/// <param name="Rests">Where each release came to rest.</param>
/// <param name="X">The mean rest position: the mean of the sessions' means.</param>
/// <param name="Y">The y.</param>
/// <param name="HalfWidthX">Half the width of its interval, over sessions where there are several, else over releases; null for one release.</param>
/// <param name="HalfWidthY">The y.</param>
public sealed record ReturnDirection(double Degrees, int Sessions, IReadOnlyList<(double X, double Y)> Rests, double X, double Y, double? HalfWidthX, double? HalfWidthY)
{
    /// <summary>How many releases.</summary>
    public int Releases => Rests.Count;
}
