namespace Tarry.Statistics.Edges;

/// <summary>A change of light in a stretch of samples.</summary>
/// <param name="Kind">Whether there is one.</param>
/// <param name="Sample">Where its middle is, in samples and parts of them from the beginning of the stretch; near which it is looked for where it was not timed.</param>
/// <param name="SignalToNoise">Its height over the standard deviation of a 2 ms mean.</param>
/// <param name="Edges">Changes of the same direction in the stretch.</param>
public readonly record struct LightStep(LightStepKind Kind, double Sample, double SignalToNoise, int Edges);
