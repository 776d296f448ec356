using Tarry.Studies.Sessions;

namespace Tarry.Reports.DataPackage;

/// <summary>Where the data of a package came from, in words.</summary>
internal static class PackageSources
{
    // How the simulated bench names its board in the session record.
    private const string SimulatedBoard = "simulated";

    // How the demonstration names the host of sticks that no board records.
    private const string SimulatedHost = "simulated host";

    public static IReadOnlyList<string> Of(IReadOnlyList<SessionRecord> sessions) =>
        [.. sessions.Select(Source).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    public static bool AreSimulated(IReadOnlyList<SessionRecord> sessions) =>
        sessions.Any(session => session is { Board: SimulatedBoard } or { Host: SimulatedHost });

    private static string Source(SessionRecord session) => session switch
    {
        { Source: { } file } => $"{file.FileName}, SHA-256 {file.Sha256}, imported",
        { Board: SimulatedBoard } or { Host: SimulatedHost } => "simulated bench",
        { Board: { } board } => $"rig {board}, firmware {session.Firmware ?? "not stated"}",
        _ => "not stated",
    };
}
