using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Sticks;

/// <summary>A recording that findings rest on.</summary>
/// <param name="Session">The session.</param>
/// <param name="Procedure">What was done.</param>
/// <param name="Source">Where the positions come from.</param>
/// <param name="Positions">How many.</param>
/// <param name="Seconds">How long it took.</param>
public sealed record StickSessionFinding(SessionKey Session, StickProcedure Procedure, string Source, int Positions, double Seconds);
