namespace Tarry.Statistics.StepResponse;

/// <summary>What a position did after its stimulus jumped, in the words of IEEE 181.</summary>
/// <param name="Base">The state level before.</param>
/// <param name="Top">The state level at the end.</param>
/// <param name="Delay">From the jump to the 50 % reference level.</param>
/// <param name="Transition">Between the 10 % and the 90 % reference level: the rise, or fall, time.</param>
/// <param name="Overshoot">How far beyond the final level it went, as a share of the amplitude; 0 or more.</param>
/// <param name="Settling">From the jump until the position stays within the tolerance of the final level.</param>
public readonly record struct StepMoments(double Base, double Top, double Delay, double Transition, double Overshoot, double Settling);
