using Tarry.Findings.Sticks.Faults;
using Tarry.Findings.Sticks.Flicks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Rest;
using Tarry.Findings.Sticks.Rim;
using Tarry.Findings.Sticks.Stops;

namespace Tarry.Findings.Sticks;

/// <summary>How truly the stick of one condition says where it is.</summary>
public sealed record StickFinding
{
    /// <summary>The condition's id.</summary>
    public required string Id { get; init; }

    /// <summary>Its recordings, by session.</summary>
    public required IReadOnlyList<StickSessionFinding> Sessions { get; init; }

    /// <summary>Its measures, in the order of <see cref="StickMeasure"/> and <see cref="StickPart"/>; what the recordings cannot support is refused.</summary>
    public required IReadOnlyList<StickResult> Measures { get; init; }

    /// <summary>In what it departs from a faultless stick.</summary>
    public required IReadOnlyList<StickFault> Faults { get; init; }

    /// <summary>The step between neighbouring positions of x, in per cent of half the range of the first recording; null where none is known.</summary>
    public required double? StepX { get; init; }

    /// <summary>The same of y.</summary>
    public required double? StepY { get; init; }

    /// <summary>Whether a dead zone that was found is axial or radial.</summary>
    public required DeadZoneForm DeadZone { get; init; }

    /// <summary>The mean turn; null where there is none.</summary>
    public required StickRose? Rose { get; init; }

    /// <summary>The positions at rest, a session each.</summary>
    public required IReadOnlyList<RestCloud> Clouds { get; init; }

    /// <summary>The noise at rest over frequency, a session and axis each.</summary>
    public required IReadOnlyList<RestSpectrum> Spectra { get; init; }

    /// <summary>The tones that stand out of that noise.</summary>
    public required IReadOnlyList<ToldLine> Lines { get; init; }

    /// <summary>Where the stick comes to rest after release, by direction.</summary>
    public required IReadOnlyList<ReturnDirection> Returns { get; init; }

    /// <summary>The angular error at each stop, over sessions.</summary>
    public required IReadOnlyList<StopError> Stops { get; init; }

    /// <summary>The non-linearity of each axis, of the first session that shows it.</summary>
    public required IReadOnlyList<NonLinearityCurve> NonLinearity { get; init; }

    /// <summary>The outcome of one measure; null where nothing is said of it.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="part">Of which part.</param>
    public StickOutcome? Of(StickMeasure measure, StickPart part = StickPart.Whole) =>
        Measures.FirstOrDefault(result => result.Measure == measure && result.Part == part)?.Outcome;

    /// <summary>The estimate of one measure; null where there is none.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="part">Of which part.</param>
    public StickEstimate? Estimate(StickMeasure measure, StickPart part = StickPart.Whole) => Of(measure, part) as StickEstimate;
}
