using Tarry.Imports.DelimitedText;
using Tarry.Studies;

namespace Tarry.Imports.LongForm;

/// <summary>All trials of a study in the long form, session by session, as text or as Parquet.</summary>
public static class StudyTrials
{
    /// <summary>Writes them as CSV.</summary>
    public static void WriteCsv(Study study, TextWriter writer, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(study);
        LongFormWriter.Write(writer, study.File, study.SessionKeys.Select(study.Read), cancellation);
    }

    /// <summary>Writes them as Parquet.</summary>
    public static void WriteParquet(Study study, Stream stream, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(study);
        LongFormParquetWriter.Write(stream, study.File, study.SessionKeys.Select(study.Read), cancellation);
    }
}
