namespace Tarry.Studies.Sessions;

/// <summary>Where imported trials came from.</summary>
/// <param name="FileName">The file's name without its folder.</param>
/// <param name="Sha256">SHA-256 of the file, lower-case hex.</param>
/// <param name="Format">The format it was read as.</param>
/// <param name="Options">The options that it was read with, by name.</param>
/// <param name="RowsRead">Rows in the file, whatever became of them.</param>
public sealed record SourceFile(string FileName, string Sha256, string Format, IReadOnlyDictionary<string, string> Options, long RowsRead);
