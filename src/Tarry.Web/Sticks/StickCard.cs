using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Sticks;

/// <summary>A stick to record: which session of which study, and how.</summary>
/// <param name="Study">The study's name on the shelf.</param>
/// <param name="Key">The session; it names a procedure.</param>
/// <param name="Port">Where the rig is.</param>
/// <param name="Request">What is recorded.</param>
/// <param name="Speed">Of the simulated rig: its seconds in one; null for as fast as it goes.</param>
public sealed record StickCard(string Study, SessionKey Key, string Port, StickRecordingRequest Request, double? Speed)
{
    /// <summary>Whether it is the simulated rig's stick.</summary>
    public bool IsSimulated => Port == SimulatedDefault.Port;
}
