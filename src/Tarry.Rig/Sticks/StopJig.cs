namespace Tarry.Rig.Sticks;

/// <summary>A plate with V notches round a hole: laid over a stick, each notch stops the stem at a known angle. Sizes in millimetres.</summary>
/// <remarks>
/// A stem of diameter d rests in a notch of 90 degrees with its axis d / sqrt(2) before the notch's point, so that its direction does not depend on d.
/// What sets the angle is how far the point lies beside its place: u = sqrt(p^2 + c^2 + z^2) / (sqrt(3) r) in radians, with the half widths p of
/// print, c of cut, z of centring, each uniform (JCGM 100:2008, 4.3.7), and r the way of the stem's axis from the centre.
/// </remarks>
public sealed record StopJig
{
    private const double NotchDepthInStems = 0.45;
    private const double LeastBridgeMm = 0.5;

    /// <summary>How many stops.</summary>
    public int Stops { get; init; } = 8;

    /// <summary>How far the stem's axis is from the centre where it rests in a notch; less than at the device's own gate.</summary>
    public double RadiusMm { get; init; } = 8;

    /// <summary>The diameter of the stem at the plate's height.</summary>
    public double StemMm { get; init; } = 5;

    /// <summary>Half width of where a printed line can lie.</summary>
    public double PrintToleranceMm { get; init; } = 0.2;

    /// <summary>Half width of where a cut can lie beside its line.</summary>
    public double CutToleranceMm { get; init; } = 0.2;

    /// <summary>Half width of where the plate's centre can lie beside the stick's.</summary>
    public double CentringToleranceMm { get; init; } = 0.2;

    /// <summary>How far the points of the notches are from the centre.</summary>
    public double PointMm => RadiusMm + (StemMm / Math.Sqrt(2));

    /// <summary>How deep the notches are.</summary>
    public double NotchMm => NotchDepthInStems * StemMm;

    /// <summary>The radius of the hole between the notches.</summary>
    public double HoleMm => PointMm - NotchMm;

    /// <summary>Half the angle that a notch takes of the hole's circle, in degrees; NaN where it never meets the circle.</summary>
    /// <remarks>The flanks leave the point at 45 degrees: p - q cos a = q sin a for the point's distance p and the hole's radius q, so sin(a + 45) = p / (q sqrt(2)).</remarks>
    public double HalfNotchDeg => (Math.Asin(PointMm / (HoleMm * Math.Sqrt(2))) * 180 / Math.PI) - 45;

    /// <summary>The standard uncertainty of the angle of a stop against the others, in degrees.</summary>
    public double UncertaintyDeg =>
        Math.Sqrt((PrintToleranceMm * PrintToleranceMm) + (CutToleranceMm * CutToleranceMm) + (CentringToleranceMm * CentringToleranceMm))
        / (Math.Sqrt(3) * RadiusMm) * 180 / Math.PI;

    /// <summary>The angles of the stops in degrees, counter-clockwise from right.</summary>
    public IReadOnlyList<double> AnglesDeg => [.. Enumerable.Range(0, Stops).Select(index => 360.0 * index / Stops)];

    /// <summary>What is wrong with the sizes and what to do, in words; null if nothing is.</summary>
    public string? Broken() => this switch
    {
        { Stops: < 4 or > 36 } => "give 4 to 36 stops",
        _ when new[] { RadiusMm, StemMm }.Any(size => !(size is > 0 and <= 60)) => "give a radius and a stem of more than 0 and at most 60 mm",
        _ when new[] { PrintToleranceMm, CutToleranceMm, CentringToleranceMm }.Any(size => !(size is >= 0 and <= 5)) => "give tolerances of 0 to 5 mm",
        _ when !(((360.0 / Stops) - (2 * HalfNotchDeg)) * Math.PI / 180 * HoleMm >= LeastBridgeMm) => FormattableString.Invariant(
            $"{Stops} notches for a stem of {StemMm} mm do not fit round a hole of {HoleMm:0.0} mm radius: take fewer stops, and turn the jig between two sittings"),
        _ => null,
    };
}
