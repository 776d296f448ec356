using System.Numerics;

namespace Tarry.Statistics.SlotGrid;

/// <summary>The power of weighted times over a band of frequencies that is narrow against the binning of the times.</summary>
/// <remarks>
/// Times are demodulated exactly at the centre of the band, then binned; frequency i/(N dt) is element i mod N of the transform.
/// What binning takes away off the centre, sinc^2((f - f0) dt), is put back. O(n + N log N).
/// </remarks>
internal sealed class BandSpectrum
{
    private readonly FourierTransform transform;
    private readonly double binSeconds;
    private float[] re;
    private float[] im;
    private float[] workRe;
    private float[] workIm;

    /// <summary>A spectrum of times within a span.</summary>
    /// <param name="span">The longest series in seconds.</param>
    /// <param name="binSeconds">The width of a bin, at most one over the width of the bands.</param>
    public BandSpectrum(double span, double binSeconds)
    {
        this.binSeconds = binSeconds;
        Size = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, Math.Ceiling(1.25 * span / binSeconds)));
        transform = FourierTransform.OfSize(Size);
        (re, im, workRe, workIm) = (new float[Size], new float[Size], new float[Size], new float[Size]);
    }

    /// <summary>The length of the transform.</summary>
    public int Size { get; }

    /// <summary>From one frequency to the next.</summary>
    public double Step => 1 / (Size * binSeconds);

    /// <summary>Adds the power at frequencies first x Step, (first + 1) x Step ... to what is there.</summary>
    public void Add(WeightedTimes part, int first, Span<double> power)
    {
        var centre = (first + (power.Length / 2)) * Step;
        Bin(part, centre);
        transform.Forward(ref re, ref im, ref workRe, ref workIm);
        var scale = 2 / part.SquaredWeights;
        for (var i = 0; i < power.Length; i++)
        {
            var at = (first + i) & (Size - 1);
            var x = Math.PI * (((first + i) * Step) - centre) * binSeconds;
            var loss = Math.Abs(x) < 1e-6 ? 1 : Math.Sin(x) / x;
            power[i] += scale * (((double)re[at] * re[at]) + ((double)im[at] * im[at])) / (loss * loss);
        }
    }

    private void Bin(WeightedTimes part, double centre)
    {
        Array.Clear(re);
        Array.Clear(im);
        var origin = double.PositiveInfinity;
        for (var i = 0; i < part.Count; i++)
        {
            origin = Math.Min(origin, part.Times[i]);
        }

        for (var i = 0; i < part.Count; i++)
        {
            var weight = part.Weights[i];
            if (weight == 0)
            {
                continue;
            }

            var time = part.Times[i] - origin;
            var bin = Math.Floor((time / binSeconds) + 0.5);
            var cycles = centre * (time - (bin * binSeconds));
            var (sine, cosine) = Math.SinCos(2 * Math.PI * (cycles - Math.Floor(cycles)));
            var at = (int)bin & (Size - 1);
            re[at] += (float)(weight * cosine);
            im[at] -= (float)(weight * sine);
        }
    }
}
