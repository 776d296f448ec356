using Tarry.Findings;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Reports.DataPackage;

/// <summary>What goes into a data package.</summary>
public sealed record DataPackageContent
{
    /// <summary>What the study says.</summary>
    public required FindingsDocument Findings { get; init; }

    /// <summary>The study file.</summary>
    public required StudyFile Study { get; init; }

    /// <summary>The records of its sessions: where the trials came from.</summary>
    public required IReadOnlyList<SessionRecord> Sessions { get; init; }

    /// <summary>Its sessions of reports and of sticks.</summary>
    public required IReadOnlyList<PackagedRecording> Recordings { get; init; }

    /// <summary>The licence of the publication; null if the publisher states none.</summary>
    public required Licence? Licence { get; init; }

    /// <summary>Who publishes it, as it should be named; null if the publisher names nobody.</summary>
    public string? Author { get; init; }

    /// <summary>The version of the publication, such as <c>1.0.0</c>.</summary>
    public required string Version { get; init; }

    /// <summary>The names of the columns that <see cref="WriteTrialsAsCsv"/> writes.</summary>
    public required IReadOnlyList<string> TrialColumns { get; init; }

    /// <summary>Writes the trials as long-form CSV.</summary>
    public required Action<TextWriter> WriteTrialsAsCsv { get; init; }

    /// <summary>Writes the trials as Parquet.</summary>
    public required Action<Stream> WriteTrialsAsParquet { get; init; }

    /// <summary>The names of the columns that <see cref="WriteStickRecordings"/> writes.</summary>
    public required IReadOnlyList<string> StickRecordingColumns { get; init; }

    /// <summary>Writes what each recording of a stick is, as CSV.</summary>
    public required Action<TextWriter> WriteStickRecordings { get; init; }

    /// <summary>Whether the study has sessions of latencies.</summary>
    internal bool HasTrials => Sessions.Count > 0;

    /// <summary>Whether the study has recordings of sticks.</summary>
    internal bool HasSticks => Recordings.Any(recording => recording.Session.Stick is not null);

    /// <summary>The records of all its sessions.</summary>
    internal IReadOnlyList<SessionRecord> AllSessions => [.. Sessions, .. Recordings.Select(recording => recording.Session)];
}
