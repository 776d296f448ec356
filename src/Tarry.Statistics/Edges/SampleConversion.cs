using System.Runtime.Intrinsics;

namespace Tarry.Statistics.Edges;

/// <summary>Samples of a recording in double precision, and back, eight at a time: one by one, each conversion waits for the one before it.</summary>
public static class SampleConversion
{
    /// <summary>Samples in double precision.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="wide">As long, or longer.</param>
    public static void Widen(ReadOnlySpan<float> samples, Span<double> wide)
    {
        var at = 0;
        for (; at + Vector256<float>.Count <= samples.Length; at += Vector256<float>.Count)
        {
            var (low, high) = Vector256.Widen(Vector256.Create(samples[at..]));
            low.CopyTo(wide[at..]);
            high.CopyTo(wide[(at + Vector256<double>.Count)..]);
        }

        for (; at < samples.Length; at++)
        {
            wide[at] = samples[at];
        }
    }

    /// <summary>Samples in single precision, rounded to the nearest.</summary>
    /// <param name="wide">The samples.</param>
    /// <param name="samples">As long, or longer.</param>
    public static void Narrow(ReadOnlySpan<double> wide, Span<float> samples)
    {
        var at = 0;
        for (; at + Vector256<float>.Count <= wide.Length; at += Vector256<float>.Count)
        {
            Vector256.Narrow(Vector256.Create(wide[at..]), Vector256.Create(wide[(at + Vector256<double>.Count)..])).CopyTo(samples[at..]);
        }

        for (; at < wide.Length; at++)
        {
            samples[at] = (float)wide[at];
        }
    }
}
