using Tarry.Findings.Sticks.Measures;

namespace Tarry.Findings.Sticks.Rest;

/// <summary>A tone that stands out of the noise of an axis at rest, those of several sessions at one frequency together.</summary>
/// <param name="Part">The axis.</param>
/// <param name="FrequencyHz">Where it stands: the mean over the sessions that tell it.</param>
/// <param name="StepHz">How finely that is known: the coarsest step of their spectra.</param>
/// <param name="RmsPercent">Its root mean square amplitude, in per cent of half the range: the mean over the sessions that tell it.</param>
/// <param name="ToldIn">How many sessions tell it.</param>
/// <param name="Sessions">How many have a spectrum of the axis.</param>
public sealed record ToldLine(StickPart Part, double FrequencyHz, double StepHz, double RmsPercent, int ToldIn, int Sessions)
{
    // The finest grids on which a frequency still tells mains from what stands beside it, and the harmonics that hum has most of.
    private const double FineHz = 2;
    private const int MostHarmonics = 3;

    /// <summary>The frequency of mains of which it may be hum, 50 or 60 Hz, or a harmonic of it; null where it is neither or not known finely enough.</summary>
    public double? MainsHz => StepHz > FineHz ? null : new double?[] { 50, 60 }.FirstOrDefault(mains =>
        Enumerable.Range(1, MostHarmonics).Any(harmonic => Math.Abs(FrequencyHz - (harmonic * mains!.Value)) <= StepHz));

    /// <summary>The lines of all spectra of a condition, by axis and frequency.</summary>
    internal static IReadOnlyList<ToldLine> Of(IReadOnlyList<RestSpectrum> spectra) =>
        [.. spectra.GroupBy(spectrum => spectrum.Part).OrderBy(group => group.Key).SelectMany(group => Of(group.Key, [.. group]))];

    private static IEnumerable<ToldLine> Of(StickPart part, IReadOnlyList<RestSpectrum> spectra)
    {
        var together = new List<RestSpectrum>();
        foreach (var spectrum in spectra.Where(spectrum => spectrum.Line is not null).OrderBy(spectrum => spectrum.Line!.Value.FrequencyHz))
        {
            if (together.Count > 0 && spectrum.Line!.Value.FrequencyHz - together[^1].Line!.Value.FrequencyHz > 1.5 * Math.Max(spectrum.StepHz, together[^1].StepHz))
            {
                yield return Joined(part, together, spectra.Count);
                together = [];
            }

            together.Add(spectrum);
        }

        if (together.Count > 0)
        {
            yield return Joined(part, together, spectra.Count);
        }
    }

    private static ToldLine Joined(StickPart part, List<RestSpectrum> told, int sessions) => new(
        part,
        told.Average(spectrum => spectrum.Line!.Value.FrequencyHz),
        told.Max(spectrum => spectrum.StepHz),
        told.Average(spectrum => spectrum.Line!.Value.Amplitude),
        told.Count,
        sessions);
}
