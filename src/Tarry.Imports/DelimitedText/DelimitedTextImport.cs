using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.DelimitedText;

/// <summary>Reads long-form delimited text, one row a trial. See <c>docs/formats/long-form-csv.md</c>.</summary>
public static class DelimitedTextImport
{
    /// <summary>The name of the format in records of imports.</summary>
    public const string Format = "long-form-csv";

    /// <summary>Reads files completely and says what they would add to a study; nothing is written.</summary>
    /// <param name="paths">The files; a session comes from one of them.</param>
    /// <param name="options">How to read them, where their headers do not say it.</param>
    /// <param name="conditions">The conditions that the study has.</param>
    /// <param name="progress">Told about every 65,536 rows.</param>
    /// <param name="cancellation">Stops the reading; nothing is left behind.</param>
    /// <returns>One plan a file, in the order given; a condition is new in the first that has it.</returns>
    /// <remarks>
    /// A bad row is refused with its line and its reason and the rest is kept. Times are read as decimal numbers and kept as
    /// whole ticks: microseconds where all times of a session are whole microseconds, else nanoseconds. One pass, linear in the
    /// size of the file; memory grows with the rows (some 250 bytes each), never with the length of a line.
    /// </remarks>
    /// <exception cref="ArgumentException">The delimiter cannot be one.</exception>
    /// <exception cref="ImportException">A file cannot be read, has no usable header, or nothing of it could be kept; or two files hold one session.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static IReadOnlyList<ImportPlan> Read(
        IReadOnlyList<string> paths,
        DelimitedTextOptions options,
        IReadOnlyList<ConditionEntry> conditions,
        IProgress<ImportProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(paths);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(conditions);
        if (options.Delimiter is '"' or '\r' or '\n' or '\0')
        {
            throw new ArgumentException("The delimiter is one character that is no quotation mark and no line end; comma, semicolon and tab are usual.", nameof(options));
        }

        var sessions = new SessionRegister(conditions);
        return [.. paths.Select(path => new FileImport(path, options, sessions, progress, cancellation).Read())];
    }
}
