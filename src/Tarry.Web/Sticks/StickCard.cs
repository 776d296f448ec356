using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Sticks;

/// <summary>A stick to record: which session of which study, and how.</summary>
/// <param name="Study">The study's name on the shelf.</param>
/// <param name="Key">The session; it names a procedure.</param>
/// <param name="Source">The rig's port, or the path of the input device.</param>
/// <param name="Request">What is recorded.</param>
/// <param name="Speed">Of the simulated rig: its seconds in one; null for as fast as it goes.</param>
public sealed record StickCard(string Study, SessionKey Key, string Source, StickRecordingRequest Request, double? Speed)
{
    /// <summary>Whether this computer reads a device, and no rig its wipers.</summary>
    public bool IsOfDevice { get; init; }

    /// <summary>Whether it is the simulated rig's stick.</summary>
    public bool IsSimulated => !IsOfDevice && Source == SimulatedDefault.Port;
}
