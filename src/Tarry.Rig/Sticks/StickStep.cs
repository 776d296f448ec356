namespace Tarry.Rig.Sticks;

/// <summary>One step of a procedure: what to do now, and for how long.</summary>
/// <param name="Prompt">What to do, in words.</param>
/// <param name="Seconds">For how long.</param>
public sealed record StickStep(string Prompt, double Seconds)
{
    /// <summary>Whether the positions of the step are part of the recording; false while the hand moves to where it should be.</summary>
    public bool Kept { get; init; } = true;

    /// <summary>How often it is done within the time, evenly: five turns, six pushes.</summary>
    public int Repeats { get; init; } = 1;

    /// <summary>What one of these is called; null for a step that is one thing.</summary>
    public string? Each { get; init; }

    /// <summary>The angle of the stop that the stick stands against meanwhile, in degrees; null for none.</summary>
    public double? AngleDeg { get; init; }

    /// <summary>The level that the rig's converter puts in place of the wiper of x, as a share of the supply; null for none.</summary>
    public double? LevelX { get; init; }
}
