using Tarry.Findings.Sticks.Measures;

namespace Tarry.StickSimulations;

/// <summary>What a measure should say.</summary>
internal sealed record Truth(StickMeasure Measure, StickPart Part, double Value);
