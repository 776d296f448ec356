namespace Tarry.Imports.Audio;

/// <summary>The last samples of a channel, by their number in the recording.</summary>
internal sealed class SampleHistory(int kept)
{
    private readonly int most = (2 * kept) + (4 * WaveReader.BlockFrames);
    private float[] samples = [];
    private int count;

    /// <summary>The number of the first sample that is still there.</summary>
    public long First { get; private set; }

    /// <summary>The number behind the last.</summary>
    public long End => First + count;

    public void Append(ReadOnlySpan<float> block)
    {
        if (count + block.Length > samples.Length && samples.Length < most)
        {
            // As long as the recording, so that a header that states millions of samples a second takes no memory by itself.
            Array.Resize(ref samples, Math.Min(most, Math.Max(2 * samples.Length, count + block.Length)));
        }

        if (count + block.Length > samples.Length)
        {
            var gone = Math.Max(0, count - kept);
            Array.Copy(samples, gone, samples, 0, count - gone);
            (First, count) = (First + gone, count - gone);
        }

        block.CopyTo(samples.AsSpan(count));
        count += block.Length;
    }

    /// <summary>Samples from a number up to one before another, as far as they are there.</summary>
    public ReadOnlySpan<float> Between(long from, long to)
    {
        var low = (int)Math.Clamp(from - First, 0, count);
        return samples.AsSpan(low, (int)Math.Clamp(to - First, low, count) - low);
    }
}
