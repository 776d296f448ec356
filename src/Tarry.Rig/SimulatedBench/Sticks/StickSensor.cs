using Tarry.Metrology;

namespace Tarry.Rig.SimulatedBench.Sticks;

/// <summary>Reads a stem as its device does, report by report: play and smoothing remember what was before.</summary>
internal sealed class StickSensor(SimulatedStick stick, SeededGenerator random, bool touchesWiper)
{
    private double heldX;
    private double heldY;
    private double smoothX;
    private double smoothY;
    private bool first = true;
    private bool smoothed;

    /// <summary>The counts of a report.</summary>
    /// <param name="stem">Where the stem is.</param>
    /// <param name="sinceBeforeMs">Time since the report before.</param>
    public (int X, int Y) Read(StemPosition stem, double sinceBeforeMs)
    {
        var (x, y) = Wiper(stem);
        var weight = !smoothed || stick.SmoothingMs <= 0 ? 1 : 1 - Math.Exp(-sinceBeforeMs / stick.SmoothingMs);
        (smoothX, smoothY) = (smoothX + (weight * (x - smoothX)), smoothY + (weight * (y - smoothY)));
        smoothed = true;
        var said = Said(stick, smoothX, smoothY);
        return stick.Layer is { } layer ? Said(layer, stick.Position(said.X), stick.Position(said.Y)) : said;
    }

    /// <summary>What the wipers give, from -1 to 1 at the gate, with their noise.</summary>
    public (double X, double Y) Wiper(StemPosition stem)
    {
        // A voltage in place of the wiper knows nothing of the stick's mechanics, and takes x alone.
        var (x, y) = touchesWiper ? (stem.X, stick.OffsetY) : WithPlay(stem);
        return (x + (stick.NoiseSd * random.NextNormal()), y + (stick.NoiseSd * random.NextNormal()));
    }

    private (double X, double Y) WithPlay(StemPosition stem)
    {
        heldX = first ? stem.X : Math.Clamp(heldX, stem.X - stick.Play, stem.X + stick.Play);
        heldY = first ? stem.Y : Math.Clamp(heldY, stem.Y - stick.Play, stem.Y + stick.Play);
        first = false;
        return stick.Sensed(heldX, heldY);
    }

    private static (int X, int Y) Said(SimulatedStick stick, double x, double y)
    {
        var (shapedX, shapedY) = stick.Shaped(x, y);
        return (stick.Count(shapedX), stick.Count(shapedY));
    }
}
