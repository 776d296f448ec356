using Tarry.Studies;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Reports.DataPackage;

/// <summary>A session of reports for other programs: its record, and how its table is written.</summary>
public sealed record PackagedReports
{
    /// <summary>Which session.</summary>
    public required SessionKey Key { get; init; }

    /// <summary>What it is; its report stream is there.</summary>
    public required SessionRecord Session { get; init; }

    /// <summary><c>session.json</c> as it stands in the study.</summary>
    public required ReadOnlyMemory<byte> Record { get; init; }

    /// <summary>Writes its table as CSV.</summary>
    public required Action<TextWriter> WriteCsv { get; init; }

    /// <summary>Writes its table as Parquet.</summary>
    public required Action<Stream> WriteParquet { get; init; }

    /// <summary>The CSV's name in a folder of files.</summary>
    public string CsvName => $"{PackageFiles.ReportsFolder}/{Key}.csv";

    /// <summary>The Parquet file's.</summary>
    public string ParquetName => $"{PackageFiles.ReportsFolder}/{Key}.parquet";

    /// <summary>The record's.</summary>
    public string RecordName => $"{PackageFiles.ReportsFolder}/{Key}.json";

    /// <summary>The sessions of reports of a study, each read when it is written.</summary>
    /// <param name="study">The study.</param>
    /// <param name="writeCsv">Writes a session as CSV.</param>
    /// <param name="writeParquet">Writes a session as Parquet.</param>
    public static IReadOnlyList<PackagedReports> Of(Study study, Action<ReportSession, TextWriter> writeCsv, Action<ReportSession, Stream> writeParquet)
    {
        ArgumentNullException.ThrowIfNull(study);
        return
        [
            .. study.ReportSessionKeys.Select(key => new PackagedReports
            {
                Key = key,
                Session = study.ReadReports(key).Record,
                Record = study.ReadRecordFile(key),
                WriteCsv = writer => writeCsv(study.ReadReports(key), writer),
                WriteParquet = stream => writeParquet(study.ReadReports(key), stream),
            }),
        ];
    }
}
