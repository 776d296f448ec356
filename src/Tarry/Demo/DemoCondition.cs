using Tarry.Rig.SimulatedBench;
using Tarry.Studies.StudyFiles;

namespace Tarry.Demo;

/// <summary>A condition of the demonstration: how it is declared, and what the simulated device does.</summary>
/// <param name="Entry">Its entry in the study file.</param>
/// <param name="Device">The truth that the simulated bench holds.</param>
internal sealed record DemoCondition(ConditionEntry Entry, SimulatedDevice Device);
