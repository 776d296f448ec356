namespace Tarry.Statistics.Edges;

/// <summary>A change of light as it is seen coarsely, in coarse samples.</summary>
/// <param name="Index">Where half of it is reached.</param>
/// <param name="Foot">A sample before it begins.</param>
/// <param name="Height">How high it is.</param>
/// <param name="SignalToNoise">That over the standard deviation of a mean.</param>
/// <param name="IsAmbiguous">Whether a smaller change comes well before it.</param>
/// <param name="Edges">Changes of that direction.</param>
internal readonly record struct CoarseStep(int Index, int Foot, double Height, double SignalToNoise, bool IsAmbiguous, int Edges);
