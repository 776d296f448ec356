namespace Tarry.Rig.Sticks.Recording;

/// <summary>Where a recording stands.</summary>
/// <param name="Step">The step that is on, from 1.</param>
/// <param name="Steps">How many there are.</param>
/// <param name="Prompt">What to do now.</param>
/// <param name="SecondsLeft">For how long still.</param>
/// <param name="Readings">Readings that came so far.</param>
public sealed record StickProgress(int Step, int Steps, string Prompt, double SecondsLeft, long Readings);
