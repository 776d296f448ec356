namespace Tarry.Statistics.Deconvolution;

/// <summary>The grids on which a delay is told from the kernel that blurs it: that of the delay, of the kernel and of their sum.</summary>
/// <remarks>
/// Bin i of the delay and bin j of the kernel add up to bin i + j of the sum with its slot wait, centres to centres: the wait is
/// laid on bins of the same width.
/// </remarks>
internal sealed class DelayGrid
{
    public const double StepMs = 0.1;
    public const int Beyond = -1;
    private const int SmoothingReach = 4;
    private const int MostBins = 4096;
    private readonly double delayFrom;
    private readonly double kernelFrom;
    private readonly double sumFrom;
    private readonly double[] slotWait;

    public DelayGrid(double[] latencies, double[] references, double slotMs)
    {
        slotWait = SlotWait(slotMs);
        var (least, most) = (references.Min(), references.Max());
        kernelFrom = Floor(least) - (SmoothingReach * StepMs);
        KernelBins = Math.Min(MostBins, (int)Math.Floor((most - kernelFrom) / StepMs) + 1 + SmoothingReach);
        delayFrom = Floor(latencies.Min() - Usual(references)) - StepMs;
        sumFrom = delayFrom + kernelFrom;
        var end = latencies.Max() + slotMs - least;
        DelayBins = Math.Clamp((int)Math.Ceiling((end - delayFrom) / StepMs) + 1, 1, MostBins);
    }


    public int DelayBins { get; }

    public int KernelBins { get; }

    public int SumBins => DelayBins + KernelBins - 1;

    /// <summary>The middle of a bin of the delay, ms.</summary>
    public double MiddleOf(int bin) => delayFrom + ((bin + 0.5) * StepMs);

    /// <summary>The bin of each latency on the grid of the sum; -1 for what lies beyond its end.</summary>
    public int[] SumBinsOf(double[] latencies) => Bins(latencies, sumFrom, SumBins - slotWait.Length + 1);

    /// <summary>The bin of each latency of the reference on the kernel's grid; -1 for what lies beyond its end.</summary>
    public int[] KernelBinsOf(double[] references) => Bins(references, kernelFrom, KernelBins - SmoothingReach);

    /// <summary>Counts with the slot wait of the reference laid over them, which the kernel has in it.</summary>
    public double[] WithSlotWait(double[] counts)
    {
        var result = new double[SumBins];
        for (var wait = 0; wait < slotWait.Length; wait++)
        {
            for (var i = 0; i < SumBins - wait; i++)
            {
                result[i + wait] += slotWait[wait] * counts[i];
            }
        }

        return result;
    }

    /// <summary>The kernel from counts: smoothed by a normal of one bin, of sum 1.</summary>
    public ConvolutionKernel Kernel(double[] counts)
    {
        var smoothing = new double[(2 * SmoothingReach) + 1];
        for (var i = 0; i < smoothing.Length; i++)
        {
            smoothing[i] = Math.Exp(-0.5 * (i - SmoothingReach) * (i - SmoothingReach));
        }

        var smooth = new ConvolutionKernel(smoothing).Convolve(counts).AsSpan(SmoothingReach, KernelBins).ToArray();
        var sum = smooth.Sum();
        return new ConvolutionKernel(Array.ConvertAll(smooth, mass => mass / sum));
    }

    // A uniform wait from 0 to the slot's length: whole bins and what is left of the last.
    private static double[] SlotWait(double slotMs)
    {
        var wait = new double[Math.Max(1, (int)Math.Ceiling((slotMs / StepMs) - 1e-9))];
        for (var i = 0; i < wait.Length; i++)
        {
            wait[i] = Math.Min(1, (slotMs / StepMs) - i) * StepMs / slotMs;
        }

        return wait;
    }

    private static int[] Bins(double[] values, double from, int bins) =>
        Array.ConvertAll(values, value => Math.Floor((value - from) / StepMs) is var bin && bin < bins ? (int)bin : Beyond);

    private static double Floor(double value) => Math.Floor(value / StepMs) * StepMs;

    // Beyond this lie the reference's own rare late responses; from there no delay is looked for below the soonest latency.
    private static double Usual(double[] references)
    {
        var sorted = references.Order().ToArray();
        return sorted[(int)(0.995 * (sorted.Length - 1))];
    }
}
