using System.Collections.Concurrent;
using System.Numerics;

namespace Tarry.Statistics.SlotGrid;

/// <summary>X[k] = sum over j of x[j] e^(-2 pi i j k/N) for one power of two N, in place.</summary>
/// <remarks>
/// Stockham's autosort algorithm in radix 4 on split real and imaginary parts (W. T. Cochran et al., Proc. IEEE 55, 1967).
/// Each lane of a vector does the same operations in the same order, so the width of the machine's vectors does not show in
/// the result. Single precision: what it is used for, finding peaks, is settled in double precision afterwards. O(N log N).
/// </remarks>
internal sealed class FourierTransform
{
    private static readonly ConcurrentDictionary<int, FourierTransform> Known = new();
    private readonly int size;
    private readonly float[] cosines;
    private readonly float[] sines;

    private FourierTransform(int size)
    {
        this.size = size;
        cosines = new float[size];
        sines = new float[size];
        for (var k = 0; k < size; k++)
        {
            var (sine, cosine) = Math.SinCos(-2 * Math.PI * k / size);
            (sines[k], cosines[k]) = ((float)sine, (float)cosine);
        }
    }

    /// <summary>The transform of a size.</summary>
    /// <param name="size">A power of two.</param>
    public static FourierTransform OfSize(int size) =>
        BitOperations.IsPow2(size)
            ? Known.GetOrAdd(size, static size => new FourierTransform(size))
            : throw new ArgumentOutOfRangeException(nameof(size), size, "The size of a transform is a power of two.");

    /// <summary>Transforms; the result is where the input was.</summary>
    /// <param name="re">Real parts, <c>size</c> long.</param>
    /// <param name="im">Imaginary parts.</param>
    /// <param name="workRe">Scratch of the same length.</param>
    /// <param name="workIm">Scratch.</param>
    public void Forward(ref float[] re, ref float[] im, ref float[] workRe, ref float[] workIm)
    {
        var (n, stride) = (size, 1);
        for (; n >= 4; n /= 4, stride *= 4)
        {
            RadixFour(n, stride, re, im, workRe, workIm);
            (re, workRe) = (workRe, re);
            (im, workIm) = (workIm, im);
        }

        if (n == 2)
        {
            RadixTwo(re, workRe);
            RadixTwo(im, workIm);
            (re, workRe) = (workRe, re);
            (im, workIm) = (workIm, im);
        }
    }

    private void RadixTwo(float[] from, float[] to)
    {
        var half = size / 2;
        for (var q = 0; q < half; q++)
        {
            var (a, b) = (from[q], from[q + half]);
            to[q] = a + b;
            to[q + half] = a - b;
        }
    }

    private void RadixFour(int n, int stride, float[] xr, float[] xi, float[] yr, float[] yi)
    {
        var quarter = n / 4;
        var jump = stride * quarter;
        for (var p = 0; p < quarter; p++)
        {
            var (w1r, w1i) = (cosines[p * stride], sines[p * stride]);
            var (w2r, w2i) = (cosines[2 * p * stride], sines[2 * p * stride]);
            var (w3r, w3i) = (cosines[3 * p * stride], sines[3 * p * stride]);
            var (from, to) = (stride * p, stride * 4 * p);
            var q = 0;
            for (; q <= stride - Vector<float>.Count; q += Vector<float>.Count)
            {
                var (ar, ai) = (new Vector<float>(xr, from + q), new Vector<float>(xi, from + q));
                var (br, bi) = (new Vector<float>(xr, from + q + jump), new Vector<float>(xi, from + q + jump));
                var (cr, ci) = (new Vector<float>(xr, from + q + (2 * jump)), new Vector<float>(xi, from + q + (2 * jump)));
                var (dr, di) = (new Vector<float>(xr, from + q + (3 * jump)), new Vector<float>(xi, from + q + (3 * jump)));
                var (sr, si) = (ar + cr, ai + ci);
                var (tr, ti) = (ar - cr, ai - ci);
                var (ur, ui) = (br + dr, bi + di);
                var (vr, vi) = (br - dr, bi - di);
                (sr + ur).CopyTo(yr, to + q);
                (si + ui).CopyTo(yi, to + q);
                Turned(tr + vi, ti - vr, w1r, w1i, yr, yi, to + q + stride);
                Turned(sr - ur, si - ui, w2r, w2i, yr, yi, to + q + (2 * stride));
                Turned(tr - vi, ti + vr, w3r, w3i, yr, yi, to + q + (3 * stride));
            }

            for (; q < stride; q++)
            {
                var (ar, ai) = (xr[from + q], xi[from + q]);
                var (br, bi) = (xr[from + q + jump], xi[from + q + jump]);
                var (cr, ci) = (xr[from + q + (2 * jump)], xi[from + q + (2 * jump)]);
                var (dr, di) = (xr[from + q + (3 * jump)], xi[from + q + (3 * jump)]);
                var (sr, si) = (ar + cr, ai + ci);
                var (tr, ti) = (ar - cr, ai - ci);
                var (ur, ui) = (br + dr, bi + di);
                var (vr, vi) = (br - dr, bi - di);
                yr[to + q] = sr + ur;
                yi[to + q] = si + ui;
                Turned(tr + vi, ti - vr, w1r, w1i, yr, yi, to + q + stride);
                Turned(sr - ur, si - ui, w2r, w2i, yr, yi, to + q + (2 * stride));
                Turned(tr - vi, ti + vr, w3r, w3i, yr, yi, to + q + (3 * stride));
            }
        }
    }

    private static void Turned(Vector<float> r, Vector<float> i, float wr, float wi, float[] yr, float[] yi, int at)
    {
        ((r * wr) - (i * wi)).CopyTo(yr, at);
        ((r * wi) + (i * wr)).CopyTo(yi, at);
    }

    private static void Turned(float r, float i, float wr, float wi, float[] yr, float[] yi, int at)
    {
        yr[at] = (r * wr) - (i * wi);
        yi[at] = (r * wi) + (i * wr);
    }
}
