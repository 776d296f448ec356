namespace Tarry.Rig.SimulatedBench.Sticks;

/// <summary>Where the stem is at an instant, and what is known of it.</summary>
/// <param name="X">Its way along x, as a share of the way to the gate.</param>
/// <param name="Y">Its way along y.</param>
/// <param name="Stimulus">The angle of the stop in degrees, or the level in place of the wiper of x; NaN where there is none.</param>
internal readonly record struct StemPosition(double X, double Y, double Stimulus)
{
    public static StemPosition Free(double x, double y) => new(x, y, double.NaN);
}
