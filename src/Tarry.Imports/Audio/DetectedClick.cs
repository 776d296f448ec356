namespace Tarry.Imports.Audio;

/// <summary>A click that a channel holds.</summary>
/// <param name="Sample">Where it begins, by its own picture alone, in samples from the beginning of the recording.</param>
/// <param name="IsSure">Whether it stands clear of the noise.</param>
internal sealed record DetectedClick(double Sample, bool IsSure)
{
    /// <summary>The filtered samples about it, for the comparison with other clicks; null once that is done.</summary>
    public float[]? Stretch { get; set; }

    /// <summary>Where it begins, compared with the others.</summary>
    public double Onset { get; set; } = Sample;
}
