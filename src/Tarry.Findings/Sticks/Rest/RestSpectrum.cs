using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Statistics.Spectra;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Sticks.Rest;

/// <summary>The noise at rest over frequency.</summary>
/// <param name="Session">The session.</param>
/// <param name="Part">The axis.</param>
/// <param name="StepHz">The step between frequencies.</param>
/// <param name="PercentPerRootHz">The root of the density at each multiple of the step, in per cent of half the range per root hertz.</param>
/// <param name="Pieces">How many pieces were averaged.</param>
/// <param name="Line">A tone that stands out at the 5 % level over all frequencies, such as mains hum; null where none does.</param>
public sealed record RestSpectrum(SessionKey Session, StickPart Part, double StepHz, IReadOnlyList<double> PercentPerRootHz, int Pieces, NoiseLine? Line)
{
    /// <summary>The fewest positions that have a spectrum.</summary>
    public const int FewestPositions = 512;

    private const double ToldBelow = 0.05;
    private const double Even = 0.1;
    private const double ShareEven = 0.95;
    private const int LongestPiece = 1024;

    /// <summary>The spectrum of an axis, or null where the reports are too few or not evenly spaced, as those of a device that reports only changes, or where every position is alike: what is left of its rounding is no noise.</summary>
    internal static RestSpectrum? Of(StickRecording recording, AxisRecording axis, StickPart part)
    {
        if (recording.Count < FewestPositions || axis.Percent.AsSpan().IndexOfAnyExcept(axis.Percent[0]) < 0)
        {
            return null;
        }

        var mean = recording.DurationMs / (recording.Count - 1);
        var even = 0;
        for (var i = 1; i < recording.Count; i++)
        {
            even += Math.Abs(recording.TimesMs[i] - recording.TimesMs[i - 1] - mean) <= Even * mean ? 1 : 0;
        }

        if (!(mean > 0) || even < ShareEven * (recording.Count - 1) || NoiseSpectrum.Of(axis.Percent, 1_000 / mean, LongestPiece) is not { } spectrum)
        {
            return null;
        }

        var line = NoiseLine.Of(spectrum);
        return new RestSpectrum(recording.Key, part, spectrum.StepHz, [.. spectrum.Density.Select(Math.Sqrt)], spectrum.Pieces, line is { P: < ToldBelow } ? line : null);
    }
}
