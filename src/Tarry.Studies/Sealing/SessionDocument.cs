using System.Text.Json;
using System.Text.Json.Serialization;
using Tarry.Studies.Disk;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Studies.Sealing;

/// <summary>A session record as it stands in <c>session.json</c> and in the first line of a journal.</summary>
internal sealed record SessionDocument
{
    public const string LatencyKind = "latency";
    public const string ReportsKind = "reports";
    public const string StickKind = "stick";

    public required int FormatVersion { get; init; }

    public required string Kind { get; init; }

    public required string Sitting { get; init; }

    public required string Condition { get; init; }

    public string? Board { get; init; }

    public string? Firmware { get; init; }

    public string? Host { get; init; }

    public string? Application { get; init; }

    public double? FrameCapHz { get; init; }

    public double? RefreshHz { get; init; }

    public string? Battery { get; init; }

    public string? RoomNotes { get; init; }

    public RunSettings? Run { get; init; }

    public string? Calibration { get; init; }

    public required IReadOnlyList<Segment> Segments { get; init; }

    public SourceFile? Source { get; init; }

    public Replacement? Replaces { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public OutcomeCounts? Counts { get; init; }

    /// <summary>How many reports there are, of a session of that kind.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Reports { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ReportStream? ReportStream { get; init; }

    /// <summary>How many positions there are, of a session of a stick.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public long? Positions { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public StickSetup? Stick { get; init; }

    public IReadOnlyList<RefusedItem> Refused { get; init; } = [];

    public long RefusedTotal { get; init; }

    public IReadOnlyList<string> Events { get; init; } = [];

    public bool? CountsReconciled { get; init; }

    public static SessionDocument Of(ReportSession session) =>
        Of(session.Record, null) with { Kind = ReportsKind, Reports = session.Reports.Count, ReportStream = session.Stream };

    public static SessionDocument Of(StickSession session) =>
        Of(session.Record, null) with { Kind = StickKind, Positions = session.Samples.Count, Stick = session.Setup };

    public static SessionDocument Of(SessionRecord record, OutcomeCounts? counts) => new()
    {
        FormatVersion = Study.FormatVersion,
        Kind = LatencyKind,
        Sitting = record.Key.Sitting,
        Condition = record.Key.Condition,
        Board = record.Board,
        Firmware = record.Firmware,
        Host = record.Host,
        Application = record.Application,
        FrameCapHz = record.FrameCapHz,
        RefreshHz = record.RefreshHz,
        Battery = record.Battery,
        RoomNotes = record.RoomNotes,
        Run = record.Run,
        Calibration = record.Calibration,
        Segments = record.Segments,
        Source = record.Source,
        Replaces = record.Replaces,
        Counts = counts,
        Refused = record.Refused,
        RefusedTotal = record.RefusedTotal,
        Events = record.Events,
        CountsReconciled = record.CountsReconciled,
    };

    /// <summary>Reads one; the version and kind are looked at first, since a newer one may have another form.</summary>
    /// <exception cref="JsonException">It is not a session record.</exception>
    /// <exception cref="StudyException">It is of a newer version or another kind.</exception>
    public static SessionDocument Read(ReadOnlySpan<byte> text, string place, string wanted = LatencyKind)
    {
        FormatVersions.Require(StudyJson.Read<Heading>(text).FormatVersion, place);
        var kind = StudyJson.Read<Heading>(text).Kind;
        if (kind != wanted)
        {
            throw new StudyException(
                $"The session is of the kind '{kind}', which is not read here; it should be '{wanted}'.",
                place,
                "Open it with the program that wrote it, or with a newer version.");
        }

        var document = StudyJson.Read<SessionDocument>(text);
        var broken = SegmentRules.Broken(document.Segments) ?? document.Run?.Actuation?.Broken() ?? BrokenContent(document, wanted);
        return broken is null ? document : throw new JsonException(broken);
    }

    private static string? BrokenContent(SessionDocument document, string kind) => kind switch
    {
        ReportsKind => document.ReportStream is { } stream ? stream.Broken() : "it does not say what its reports are",
        StickKind => document.Stick is { } stick ? stick.Broken() : "it does not say what was done with the stick",
        _ => null,
    };

    public SessionRecord ToRecord() => new()
    {
        Key = new SessionKey(Sitting, Condition, Stick?.Procedure),
        Segments = Segments,
        Board = Board,
        Firmware = Firmware,
        Host = Host,
        Application = Application,
        FrameCapHz = FrameCapHz,
        RefreshHz = RefreshHz,
        Battery = Battery,
        RoomNotes = RoomNotes,
        Run = Run,
        Calibration = Calibration,
        Source = Source,
        Replaces = Replaces,
        ReportStream = ReportStream,
        Stick = Stick,
        Refused = Refused,
        RefusedTotal = RefusedTotal,
        Events = Events,
        CountsReconciled = CountsReconciled,
    };

    private sealed record Heading
    {
        public required int FormatVersion { get; init; }

        public required string Kind { get; init; }
    }
}
