namespace Tarry.Rig.HostEvents;

/// <summary>One step of a self-check.</summary>
/// <param name="What">What was tried.</param>
/// <param name="Worked">Whether it worked.</param>
/// <param name="Found">What came of it.</param>
public sealed record HostInputStep(string What, bool Worked, string Found);
