namespace Tarry.Findings.Sticks.Reshaping;

/// <summary>A dead zone that is cut out: inside it the layer says the middle, and beyond it what it would say without.</summary>
/// <param name="Low">The last level at which the axis stands still; 0 where it moves at the first.</param>
/// <param name="High">The level after that.</param>
internal readonly record struct CutZone(double Low, double High)
{
    /// <summary>Between which of the levels the zone ends: those from the first on stand still at which less than half is said of what the curve through the others asks for.</summary>
    public static CutZone Of(ResponseCurve curve, double[] without, double[] with)
    {
        var end = with.Max();
        var moving = 0;
        while (moving < with.Length - 1 && curve.At(without[moving]) > 0 && with[moving] < curve.At(without[moving]) * end / 2)
        {
            moving++;
        }

        return new CutZone(moving == 0 ? 0 : without[moving - 1], without[moving]);
    }
}
