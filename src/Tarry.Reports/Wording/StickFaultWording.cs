using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Faults;
using Tarry.Findings.Sticks.Measures;

namespace Tarry.Reports.Wording;

/// <summary>What is said of the faults of a stick, the same on the terminal, in the report and in figures.</summary>
public static class StickFaultWording
{
    private const int MostNames = 2;

    /// <summary>What is told of some measures: their faults, that no departure is told, or that they are not told at all.</summary>
    /// <param name="finding">Whose they are.</param>
    /// <param name="part">The one part that counts; null for all.</param>
    /// <param name="measures">The measures.</param>
    public static StickVerdict Verdict(StickFinding finding, StickPart? part, params IReadOnlyList<StickMeasure> measures)
    {
        ArgumentNullException.ThrowIfNull(finding);
        bool Counts(StickMeasure measure, StickPart of) => measures.Contains(measure) && (part is null || of == part);
        bool IsTold(StickMeasure measure) => finding.Measures.Any(result => result.Measure == measure && Counts(measure, result.Part) && result.Outcome is StickEstimate);
        var faults = finding.Faults.Where(fault => Counts(fault.Measure, fault.Part)).Select(fault => Clause(fault.Kind, finding.DeadZone)).Distinct().ToList();
        return faults.Count > 0 ? new(string.Join("; ", faults), IsFault: true)
            : new(Faultless([.. measures.Where(IsTold)], [.. measures.Where(measure => !IsTold(measure))]), IsFault: false);
    }

    /// <summary>A fault as a clause with its measure: <c>rests off its middle (x 1.5 %, 1.4 to 1.6)</c>.</summary>
    /// <param name="finding">Whose it is.</param>
    /// <param name="fault">The fault.</param>
    public static string Fault(StickFinding finding, StickFault fault)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(fault);
        var words = Clause(fault.Kind, finding.DeadZone);
        return finding.Estimate(fault.Measure, fault.Part) is { } estimate
            ? $"{words} ({StickWording.Name(fault.Measure, fault.Part)} {StickWording.Value(estimate)} {StickMeasureText.Symbol(StickMeasureText.Of(fault.Measure).Unit)}, {StickWording.Bounds(estimate)})"
            : words;
    }

    // What is silent must not pass for good: where only some of the measures are told, they are named.
    private static string Faultless(IReadOnlyList<StickMeasure> told, IReadOnlyList<StickMeasure> silent) =>
        told.Count == 0 ? "not told: the report says why"
        : silent.Count == 0 ? "no departure is told"
        : $"no departure in {Names(told)}; {(silent.Count > MostNames ? Numbers.Count(silent.Count, "measure") : Names(silent))} not told";

    private static string Clause(StickFaultKind kind, DeadZoneForm form) => kind switch
    {
        StickFaultKind.OffCentre => "rests off its middle",
        StickFaultKind.Drifts => "drifts at rest",
        StickFaultKind.CoarseSteps => "has fewer steps than stated",
        StickFaultKind.ReturnsShort => "comes to rest on the side from which it came",
        StickFaultKind.Overshoots => "swings past where it stops",
        StickFaultKind.OutOfRound => "is out of round",
        StickFaultKind.UnequalGain => "says more along one axis than along the other",
        StickFaultKind.NotOrthogonal => "has axes that are not at a right angle",
        StickFaultKind.Square => "is drawn towards a square",
        StickFaultKind.Hysteresis => "has hysteresis",
        StickFaultKind.AngularError => "errs in direction",
        StickFaultKind.Rotated => "is turned as a whole",
        StickFaultKind.NotLinear => "is not linear",
        StickFaultKind.UnevenSteps => "has uneven steps",
        StickFaultKind.DeadZone => form switch
        {
            DeadZoneForm.Axial => "has an axial dead zone",
            DeadZoneForm.Radial => "has a radial dead zone",
            _ => "has a dead zone",
        },
        StickFaultKind.Saturation => "saturates before its end",
        StickFaultKind.Crosstalk => "says something of the other axis' motion",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "A fault without words."),
    };

    private static string Names(IReadOnlyList<StickMeasure> measures) => Listing.And([.. measures.Select(measure => StickMeasureText.Of(measure).Name)]);
}
