using Tarry.Findings.Sticks.Measures;
using Tarry.Statistics.Descriptives;

namespace Tarry.Findings.Sticks.Recordings;

/// <summary>All that one session says: readings, and what it cannot support.</summary>
internal sealed class SessionReadings
{
    public List<StickReading> Found { get; } = [];

    public List<(StickMeasure Measure, StickPart Part, StickRefusal Refusal)> Refused { get; } = [];

    public void Refuse(StickRefusal refusal, params ReadOnlySpan<(StickMeasure Measure, StickPart Part)> measures)
    {
        foreach (var (measure, part) in measures)
        {
            Refused.Add((measure, part, refusal));
        }
    }

    /// <summary>The mean of replicates, its error from their scatter.</summary>
    public void Add(StickMeasure measure, StickPart part, ReadOnlySpan<double> replicates, string of, double resolution = 0, double allowance = 0, double ideal = 0, double hidden = 0)
    {
        if (replicates.Length == 0)
        {
            return;
        }

        var error = replicates.Length < 2 ? (double?)null : Moments.StandardDeviation(replicates) / Math.Sqrt(replicates.Length);
        Found.Add(new StickReading(measure, part, Moments.Mean(replicates), error, replicates.Length - 1, replicates.Length, of) { Resolution = resolution, Allowance = allowance, Ideal = ideal, Hidden = hidden });
    }

    /// <summary>The mean of replicates on the scale of its logarithm, for sizes.</summary>
    public void AddSize(StickMeasure measure, StickPart part, ReadOnlySpan<double> replicates, string of, Func<double, double> sizeOfMean)
    {
        var mean = Moments.Mean(replicates);
        if (!(mean > 0))
        {
            Found.Add(new StickReading(measure, part, double.NegativeInfinity, 0, 1, replicates.Length, of));
            return;
        }

        // d ln f(m) = f'(m)/f(m) dm, by a small step.
        var step = 1e-4 * mean;
        var slope = (Math.Log(sizeOfMean(mean + step)) - Math.Log(sizeOfMean(mean - step))) / (2 * step);
        var error = replicates.Length < 2 ? (double?)null : Math.Abs(slope) * Moments.StandardDeviation(replicates) / Math.Sqrt(replicates.Length);
        Found.Add(new StickReading(measure, part, Math.Log(sizeOfMean(mean)), error, replicates.Length - 1, replicates.Length, of));
    }
}
