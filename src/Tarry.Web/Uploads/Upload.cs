namespace Tarry.Web.Uploads;

/// <summary>A file that was brought in and waits to be imported, outside of every study.</summary>
/// <param name="Id">What it is called in addresses: random, so that nobody can guess it.</param>
/// <param name="Path">Where it lies.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Sha256">SHA-256 of its bytes, lower-case hex.</param>
/// <param name="GivenName">The name that the browser gave.</param>
public sealed record Upload(string Id, string Path, long Bytes, string Sha256, string GivenName)
{
    /// <summary>The name under which it lies, without its folder: the given one without what no file name can hold.</summary>
    public string Name => System.IO.Path.GetFileName(Path);
}
