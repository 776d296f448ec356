using Tarry.Studies;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Reports.DataPackage;

/// <summary>A session that holds no latencies, but reports or the positions of a stick, for other programs: its record, and how its table is written.</summary>
public sealed record PackagedRecording
{
    /// <summary>Which session.</summary>
    public required SessionKey Key { get; init; }

    /// <summary>What it is; its report stream is there, or what was done with the stick.</summary>
    public required SessionRecord Session { get; init; }

    /// <summary><c>session.json</c> as it stands in the study.</summary>
    public required ReadOnlyMemory<byte> Record { get; init; }

    /// <summary>Writes its table as CSV.</summary>
    public required Action<TextWriter> WriteCsv { get; init; }

    /// <summary>Writes its table as Parquet.</summary>
    public required Action<Stream> WriteParquet { get; init; }

    /// <summary>The CSV's name in a folder of files.</summary>
    public string CsvName => $"{Folder}/{Key}.csv";

    /// <summary>The Parquet file's.</summary>
    public string ParquetName => $"{Folder}/{Key}.parquet";

    /// <summary>The record's.</summary>
    public string RecordName => $"{Folder}/{Key}.json";

    /// <summary>All three.</summary>
    internal IReadOnlyList<string> Names => [CsvName, ParquetName, RecordName];

    private string Folder => Session.Stick is null ? PackageFiles.ReportsFolder : PackageFiles.SticksFolder;

    /// <summary>The sessions of reports of a study, each read when it is written.</summary>
    /// <param name="study">The study.</param>
    /// <param name="writeCsv">Writes a session as CSV.</param>
    /// <param name="writeParquet">Writes a session as Parquet.</param>
    public static IReadOnlyList<PackagedRecording> Reports(Study study, Action<ReportSession, TextWriter> writeCsv, Action<ReportSession, Stream> writeParquet)
    {
        ArgumentNullException.ThrowIfNull(study);
        return Of(study, study.ReportSessionKeys, study.ReadReports, session => session.Record, writeCsv, writeParquet);
    }

    /// <summary>The sessions of sticks of a study likewise, those that are set aside too.</summary>
    /// <param name="study">The study.</param>
    /// <param name="writeCsv">Writes a session as CSV.</param>
    /// <param name="writeParquet">Writes a session as Parquet.</param>
    public static IReadOnlyList<PackagedRecording> Sticks(Study study, Action<StickSession, TextWriter> writeCsv, Action<StickSession, Stream> writeParquet)
    {
        ArgumentNullException.ThrowIfNull(study);
        return Of(study, study.StickKeys, study.ReadStick, session => session.Record, writeCsv, writeParquet);
    }

    private static PackagedRecording[] Of<T>(
        Study study, IReadOnlyList<SessionKey> keys, Func<SessionKey, T> read, Func<T, SessionRecord> recordOf, Action<T, TextWriter> writeCsv, Action<T, Stream> writeParquet) =>
    [
        .. keys.Select(key => new PackagedRecording
        {
            Key = key,
            Session = recordOf(read(key)),
            Record = study.ReadRecordFile(key),
            WriteCsv = writer => writeCsv(read(key), writer),
            WriteParquet = stream => writeParquet(read(key), stream),
        }),
    ];
}
