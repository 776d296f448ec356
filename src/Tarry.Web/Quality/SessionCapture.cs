using Tarry.Studies.Sessions;

namespace Tarry.Web.Quality;

/// <summary>How one session was captured: its rig, its clock, and what was refused.</summary>
/// <param name="Record">What the session says of itself.</param>
/// <param name="Problem">Why it cannot be read; null where it can.</param>
public sealed record SessionCapture(SessionRecord? Record, string? Problem)
{
    /// <summary>Which session.</summary>
    public required SessionKey Key { get; init; }
}
