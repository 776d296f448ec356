using Tarry.Imports.DelimitedText;
using Tarry.Imports.LongForm;
using Tarry.Studies;

namespace Tarry.Output;

/// <summary>Writes the trials of a study as files.</summary>
internal static class TrialFiles
{
    public static void WriteCsv(Study study, TextWriter writer, CancellationToken cancellation) =>
        LongFormWriter.Write(writer, study.File, study.SessionKeys.Select(study.Read), cancellation);

    public static void WriteParquet(Study study, Stream stream, CancellationToken cancellation) =>
        LongFormParquetWriter.Write(stream, study.File, study.SessionKeys.Select(study.Read), cancellation);

    /// <summary>Writes <c>trials.parquet</c> and returns its path.</summary>
    /// <exception cref="UsageException">No folder is given: a terminal cannot show Parquet.</exception>
    public static string Parquet(Study study, string? folder, CancellationToken cancellation) => folder is null
        ? throw new UsageException("Parquet is not text, so it goes to a file.", "Give the folder to write it to: --out DIR.")
        : WholeFile.WriteBytes(Path.Combine(folder, "trials.parquet"), stream => WriteParquet(study, stream, cancellation));
}
