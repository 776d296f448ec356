using Tarry.Findings.Sticks.Measures;

namespace Tarry.StickSimulations;

/// <summary>What a measure should say; NaN for the noise of the stick.</summary>
internal sealed record Truth(StickMeasure Measure, StickPart Part, double Value);
