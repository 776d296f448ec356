namespace Tarry.Imports;

/// <summary>How far an import has come.</summary>
/// <param name="FileName">The file being read, without its folder.</param>
/// <param name="BytesRead">Bytes of it read so far.</param>
/// <param name="BytesTotal">Its size.</param>
/// <param name="RowsRead">Rows of it read so far.</param>
public readonly record struct ImportProgress(string FileName, long BytesRead, long BytesTotal, long RowsRead);
