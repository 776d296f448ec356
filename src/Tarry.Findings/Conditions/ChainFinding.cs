using Tarry.Studies.Sessions;

namespace Tarry.Findings.Conditions;

/// <summary>What the sessions of a condition say of the way from contact to sensor: each thing once, in the order of the sessions; empty where none says.</summary>
/// <remarks>Where sessions differ, the list holds every answer: a chain that changed between sittings must be seen.</remarks>
public sealed record ChainFinding
{
    /// <summary>The rig's boards, such as <c>uno</c>.</summary>
    public required IReadOnlyList<string> Boards { get; init; }

    /// <summary>The rig's firmware versions.</summary>
    public required IReadOnlyList<string> RigFirmware { get; init; }

    /// <summary>Where the rig saw the response: <c>light</c>, <c>edge</c> or <c>echo</c>.</summary>
    public required IReadOnlyList<string> Responses { get; init; }

    /// <summary>The hosts.</summary>
    public required IReadOnlyList<string> Hosts { get; init; }

    /// <summary>The applications that showed the response.</summary>
    public required IReadOnlyList<string> Applications { get; init; }

    /// <summary>Their frame caps in frames a second.</summary>
    public required IReadOnlyList<double> FrameCapsHz { get; init; }

    /// <summary>Refresh rates of the screen.</summary>
    public required IReadOnlyList<double> RefreshRatesHz { get; init; }

    internal static ChainFinding Of(IEnumerable<SessionRecord> records)
    {
        var all = records.ToList();
        return new()
        {
            Boards = Each(record => record.Board),
            RigFirmware = Each(record => record.Firmware),
            Responses = Each(record => record.Run?.Response),
            Hosts = Each(record => record.Host),
            Applications = Each(record => record.Application),
            FrameCapsHz = [.. all.Select(record => record.FrameCapHz).OfType<double>().Distinct()],
            RefreshRatesHz = [.. all.Select(record => record.RefreshHz).OfType<double>().Distinct()],
        };

        IReadOnlyList<string> Each(Func<SessionRecord, string?> part) =>
            [.. all.Select(part).Where(text => !string.IsNullOrWhiteSpace(text)).OfType<string>().Distinct(StringComparer.Ordinal)];
    }
}
