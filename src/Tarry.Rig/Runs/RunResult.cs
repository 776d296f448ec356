using Tarry.Studies.Sessions;

namespace Tarry.Rig.Runs;

/// <summary>How a run ended.</summary>
/// <param name="Session">The sealed session; null where the run was stopped: its journal is left, and the same request goes on with it.</param>
/// <param name="Final">Where it stood at its end.</param>
public sealed record RunResult(SessionData? Session, RunProgress Final)
{
    /// <summary>Whether the run reached its end and the session is sealed.</summary>
    public bool Completed => Session is not null;
}
