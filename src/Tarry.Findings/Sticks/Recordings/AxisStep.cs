namespace Tarry.Findings.Sticks.Recordings;

/// <summary>The step of an axis.</summary>
/// <param name="Counts">In counts; 0 where none is stated and none seen.</param>
/// <param name="IsShown">Whether a recording of motion would have shown a coarser one, or what is stated is coarse enough to be believed; else the axis may be coarser.</param>
internal readonly record struct AxisStep(double Counts, bool IsShown);
