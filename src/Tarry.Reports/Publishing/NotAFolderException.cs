namespace Tarry.Reports.Publishing;

/// <summary>What was named to write to is a file, and a folder is needed. Nothing was written.</summary>
/// <param name="path">What was named.</param>
public sealed class NotAFolderException(string path) : IOException($"{path} is a file; a folder is needed to write to.")
{
    /// <summary>What the user can do.</summary>
    public string Remedy { get; } = "Give another folder with --out.";
}
