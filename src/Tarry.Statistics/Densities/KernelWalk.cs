using System.Runtime.Intrinsics;

namespace Tarry.Statistics.Densities;

/// <summary>
/// Walks a Gaussian along an even grid, four places at a time: at even steps s the ratio of neighbours four apart,
/// exp(-4 s u - 8 s^2), itself falls by the constant factor exp(-16 s^2).
/// </summary>
internal sealed class KernelWalk
{
    /// <summary>How many places are walked at a time, and how many the array is padded by on either side.</summary>
    public const int Block = 4;

    private readonly double step;
    private readonly double shrink;
    private readonly Vector256<double> within;
    private readonly Vector256<double> up;
    private readonly Vector256<double> down;

    /// <summary>A walk at steps of the given number of bandwidths, at most 1 so that no factor overflows.</summary>
    public KernelWalk(double step)
    {
        this.step = step;
        var square = step * step;
        shrink = Math.Exp(-square * Block * Block);
        within = Lanes(k => Math.Exp(-0.5 * square * k * k));
        up = Lanes(k => Math.Exp(-square * ((Block * k) + (0.5 * Block * Block))));
        down = Lanes(k => Math.Exp(square * ((Block * k) - (0.5 * Block * Block))));
    }

    /// <summary>Adds exp(-u^2/2) at every place from first to last, from the place nearest the centre outward.</summary>
    public void Add(double[] padded, double centre, int first, int last)
    {
        var nearest = (int)Math.Clamp(Math.Round(centre / step), first, last);
        var u = (nearest * step) - centre;
        var ratio = up * Math.Exp(-step * Block * u);
        var height = At(u);
        for (var i = nearest; i <= last; i += Block)
        {
            AddBlock(padded, i + Block, height);
            height *= ratio;
            ratio *= shrink;
        }

        u -= Block * step;
        ratio = down * Math.Exp(step * Block * u);
        height = At(u);
        for (var i = nearest - Block; i > first - Block; i -= Block)
        {
            AddBlock(padded, i + Block, height);
            height *= ratio;
            ratio *= shrink;
        }
    }

    private static void AddBlock(double[] padded, int index, Vector256<double> height)
    {
        var block = padded.AsSpan(index, Block);
        (Vector256.Create<double>(block) + height).CopyTo(block);
    }

    /// <summary>exp(-u^2/2) at four places from u on.</summary>
    private Vector256<double> At(double u)
    {
        var one = Math.Exp(-step * u);
        return within * Math.Exp(-0.5 * u * u) * Vector256.Create(1, one, one * one, one * one * one);
    }

    private static Vector256<double> Lanes(Func<int, double> lane) =>
        Vector256.Create(lane(0), lane(1), lane(2), lane(3));
}
