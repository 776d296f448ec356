using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Faults;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Reshaping;
using Tarry.Findings.Sticks.Rest;
using Tarry.Findings.Sticks.Stops;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Wording;

/// <summary>What is said of sticks, the same on the terminal and in the report.</summary>
public static class StickWording
{
    /// <summary>A measure and its part: <c>centre offset, x</c>.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="part">Of which part.</param>
    public static string Name(StickMeasure measure, StickPart part) =>
        part == StickPart.Whole ? StickMeasureText.Of(measure).Name : $"{StickMeasureText.Of(measure).Name}, {Part(part)}";

    /// <summary>A part in words.</summary>
    /// <param name="part">The part.</param>
    public static string Part(StickPart part) => part switch
    {
        StickPart.X => "x",
        StickPart.Y => "y",
        StickPart.UpRight => "up right",
        StickPart.UpLeft => "up left",
        StickPart.DownLeft => "down left",
        StickPart.DownRight => "down right",
        StickPart.Whole => "",
        _ => part.ToString().ToLowerInvariant(),
    };

    /// <summary>The value with the digits that its interval supports.</summary>
    /// <param name="estimate">The estimate.</param>
    public static string Value(StickEstimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return Fixed(estimate.Value, Decimals(estimate));
    }

    /// <summary>The interval.</summary>
    /// <param name="estimate">The estimate.</param>
    public static string Bounds(StickEstimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return $"{Fixed(estimate.Low, Decimals(estimate))} to {Fixed(estimate.High, Decimals(estimate))}";
    }

    /// <summary>On what it rests: <c>3 sessions, 30 turns</c>; one session is said to hold within it only.</summary>
    /// <param name="estimate">The estimate.</param>
    public static string Basis(StickEstimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return estimate.Sessions == 1
            ? $"within one session; {Whole(estimate.Replicates)} {estimate.ReplicateOf}"
            : $"{Count(estimate.Sessions, "session")}; {Whole(estimate.Replicates)} {estimate.ReplicateOf}";
    }

    /// <summary>A measure with its value and interval: <c>centre offset 2.4 % (0.0 to 4.5)</c>, or that it is not told.</summary>
    /// <param name="finding">Whose it is.</param>
    /// <param name="measure">The measure.</param>
    /// <param name="part">Of which part.</param>
    public static string Claim(StickFinding finding, StickMeasure measure, StickPart part = StickPart.Whole)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Estimate(measure, part) is { } estimate
            ? $"{Name(measure, part)} {Value(estimate)}{NoBreakSpace}{StickMeasureText.Symbol(StickMeasureText.Of(measure).Unit)} ({Bounds(estimate)})"
            : $"{Name(measure, part)} not told";
    }

    /// <summary>The step of the axes: <c>one step 0.39 %</c>.</summary>
    /// <param name="finding">Whose it is.</param>
    public static string Step(StickFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        static string Percent(double step) => $"{Fixed(step, Numbers.Decimals(step, 4))}{NoBreakSpace}%";
        return (finding.StepX, finding.StepY) switch
        {
            ({ } x, { } y) when Percent(x) == Percent(y) => $"one step {Percent(x)}",
            ({ } x, { } y) => $"one step {Percent(x)} of x, {Percent(y)} of y",
            _ => "steps not known",
        };
    }

    /// <summary>A tone in the noise at rest: <c>50.3 Hz, 0.021 % rms, told in 2 of 3 sessions</c>.</summary>
    /// <param name="line">The line.</param>
    public static string Line(ToldLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return $"{Frequency(line)}{(line.MainsHz is { } mains ? $" (hum of {Whole((long)mains)}{NoBreakSpace}Hz mains?)" : "")}, {Fixed(line.RmsPercent, Numbers.Decimals(line.RmsPercent, 4))}{NoBreakSpace}% rms, told in {Whole(line.ToldIn)} of {Count(line.Sessions, "session")}";
    }

    /// <summary>The frequency of a tone with the digits that its spectrum supports.</summary>
    /// <param name="line">The line.</param>
    public static string Frequency(ToldLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return $"{Fixed(line.FrequencyHz, line.StepHz < 1 ? 1 : 0)}{NoBreakSpace}Hz";
    }

    /// <summary>The error at a stop in degrees, with its sign.</summary>
    /// <param name="stop">The stop.</param>
    public static string Error(StopError stop)
    {
        ArgumentNullException.ThrowIfNull(stop);
        return Fixed(stop.Error, Decimals(stop), withPlus: true);
    }

    /// <summary>The angle that a stick says at a stop, in degrees.</summary>
    /// <param name="stop">The stop.</param>
    public static string Said(StopError stop)
    {
        ArgumentNullException.ThrowIfNull(stop);
        return Fixed(stop.Said, Decimals(stop));
    }

    /// <summary>The interval of the error at a stop.</summary>
    /// <param name="stop">The stop.</param>
    public static string Bounds(StopError stop)
    {
        ArgumentNullException.ThrowIfNull(stop);
        return stop.HalfWidth is { } half ? $"{Fixed(stop.Error - half, Decimals(stop))} to {Fixed(stop.Error + half, Decimals(stop))}" : "one visit tells no interval";
    }

    /// <summary>On what the error at a stop rests.</summary>
    /// <param name="stop">The stop.</param>
    public static string Basis(StopError stop)
    {
        ArgumentNullException.ThrowIfNull(stop);
        return $"{(stop.Sessions == 1 ? "within one session" : Count(stop.Sessions, "session"))}, {Count(stop.Visits, "visit")}";
    }

    /// <summary>What a layer was found to do, in a sentence.</summary>
    /// <param name="reshaping">The finding.</param>
    public static string Sentence(ReshapingFinding reshaping)
    {
        ArgumentNullException.ThrowIfNull(reshaping);
        var clauses = reshaping.Kinds.Select(kind => kind switch
        {
            ReshapingKind.CircleToSquare => $"draws the circle towards a square ({Numeric(reshaping.Squareness, "% of the way")})",
            ReshapingKind.DeadZone => $"says nothing below {Numeric(reshaping.DeadZone, "%")}",
            ReshapingKind.Saturation => $"says its end from {Numeric(reshaping.Saturation, "%")} on",
            ReshapingKind.Curve => $"bends what lies between, to the power {Numeric(reshaping.Exponent, "")}",
            _ => throw new ArgumentOutOfRangeException(nameof(reshaping), kind, "A kind without words."),
        }).ToList();
        return clauses.Count == 0
            ? $"{reshaping.Layer} ({reshaping.With} against {reshaping.Without}): no reshaping is told."
            : $"{reshaping.Layer} ({reshaping.With} against {reshaping.Without}) {Listing.And(clauses)}.";
    }

    private static string Numeric(StickOutcome outcome, string unit) =>
        outcome is StickEstimate estimate ? $"{Value(estimate)}{(unit.Length == 0 ? "" : " " + unit)}, {Bounds(estimate)}" : "";

    private static int Decimals(StopError stop) => stop.HalfWidth is { } half ? Numbers.Decimals(2 * half) : 1;

    private static int Decimals(StickEstimate estimate) => Numbers.Decimals(estimate.High - estimate.Low, estimate.High - estimate.Low < 1e-6 ? 1 : 4);
}
