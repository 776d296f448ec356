namespace Tarry.Findings.Sticks.Ramps;

/// <summary>The sums of which a straight line of least squares is made.</summary>
internal sealed class LineSums
{
    private double x;
    private double y;
    private double xx;
    private double xy;

    public int Count { get; private set; }

    public double MeanX => x / Count;

    public double MeanY => y / Count;

    /// <summary>The slope; not a number where all points are at one place.</summary>
    public double Slope => Products / Squares;

    private double Squares => xx - (x * x / Count);

    private double Products => xy - (x * y / Count);

    /// <summary>The slope that two sets of points have in common, each with a height of its own; null where there is none.</summary>
    public static double? CommonSlope(LineSums a, LineSums b)
    {
        var slope = (a.Products + b.Products) / (a.Squares + b.Squares);
        return double.IsFinite(slope) && slope != 0 ? slope : null;
    }

    public void Add(double atX, double atY)
    {
        Count++;
        x += atX;
        y += atY;
        xx += atX * atX;
        xy += atX * atY;
    }
}
