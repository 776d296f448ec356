using Tarry.Metrology;
using Tarry.Statistics.Shapes;

namespace Tarry.Findings.Shapes;

/// <summary>
/// The family that describes a condition's latencies best, fitted by maximum likelihood with a common shape and a place of
/// its own for every session.
/// </summary>
public sealed record ShapeFinding : ShapeOutcome
{
    /// <summary>The family of the lowest BIC.</summary>
    public required ShapeFamily Family { get; init; }

    /// <summary>Its parameters by name with the unit in the name, in the order of the formula.</summary>
    public required IReadOnlyDictionary<string, double> Parameters { get; init; }

    /// <summary>The share of late responses by the fit, 0 to 1: uniform from the median to the latest.</summary>
    public required double LateShare { get; init; }

    /// <summary>All families that were fitted, best first.</summary>
    public required IReadOnlyList<ShapeCandidate> Candidates { get; init; }

    /// <summary>BIC of the runner-up less that of the best.</summary>
    public required double MarginInBic { get; init; }

    /// <summary>Whether the margin is enough; if not, the data cannot tell the families apart.</summary>
    public required bool Decided { get; init; }

    /// <summary>Whether the data agree with the best family; null where no bins are left for it.</summary>
    public required GoodnessOfFit? Fit { get; init; }

    /// <summary>The fitted density, for figures.</summary>
    public required FittedCurve Curve { get; init; }

    /// <summary>How far apart the sessions' places are, as a standard deviation; null with one session.</summary>
    public required LatencyDifference? SessionShift { get; init; }

    /// <summary>How many trials it rests on: those of sessions with drift, change or dependence stay out.</summary>
    public required int Trials { get; init; }

    /// <summary>How many sessions it rests on.</summary>
    public required int Sessions { get; init; }
}
