using Tarry.Studies.Reports;
using Tarry.Studies.Sticks;

namespace Tarry.Studies.Sessions;

/// <summary>What a session is, beside its trials: the contents of <c>session.json</c>.</summary>
public sealed record SessionRecord
{
    /// <summary>Which session.</summary>
    public required SessionKey Key { get; init; }

    /// <summary>Its unbroken stretches of the tick counter, in order; at least one.</summary>
    public required IReadOnlyList<Segment> Segments { get; init; }

    /// <summary>The board, such as <c>uno</c>; null for imports.</summary>
    public string? Board { get; init; }

    /// <summary>The rig's firmware version; null for imports.</summary>
    public string? Firmware { get; init; }

    /// <summary>The host and its operating system, as the user wishes to name it.</summary>
    public string? Host { get; init; }

    /// <summary>The application that showed the response.</summary>
    public string? Application { get; init; }

    /// <summary>The application's frame cap in frames a second.</summary>
    public double? FrameCapHz { get; init; }

    /// <summary>The screen's refresh rate.</summary>
    public double? RefreshHz { get; init; }

    /// <summary>The state of the device's battery, in words.</summary>
    public string? Battery { get; init; }

    /// <summary>Anything about the room or the set-up.</summary>
    public string? RoomNotes { get; init; }

    /// <summary>How a live run pressed; null for imports.</summary>
    public RunSettings? Run { get; init; }

    /// <summary>The calibration of the rig that holds for it, by name; null where there is none.</summary>
    public string? Calibration { get; init; }

    /// <summary>Where imported trials came from; null for live runs.</summary>
    public SourceFile? Source { get; init; }

    /// <summary>What the reports are, of a session of that kind; null for latencies.</summary>
    public ReportStream? ReportStream { get; init; }

    /// <summary>What was done with the stick, of a session of that kind; null for others.</summary>
    public StickSetup? Stick { get; init; }

    /// <summary>What it corrects, and why; null for a session that corrects none.</summary>
    public Replacement? Replaces { get; init; }

    /// <summary>What was refused and why: the first 1,000.</summary>
    public IReadOnlyList<RefusedItem> Refused { get; init; } = [];

    /// <summary>How many things were refused, those beyond the first 1,000 too; never less than the list holds.</summary>
    public long RefusedTotal
    {
        get => Math.Max(field, Refused.Count);
        init;
    }

    /// <summary>What else happened while it was captured: reboots, lost links, counts that do not agree. In words.</summary>
    public IReadOnlyList<string> Events { get; init; } = [];

    /// <summary>Whether the rig's own counts agreed at the end; null where there is no rig or it did not say.</summary>
    public bool? CountsReconciled { get; init; }
}
