namespace Tarry.Web.Hosting;

/// <summary>What the web app serves, and where.</summary>
/// <param name="Folder">The folder whose studies are on the shelf.</param>
/// <param name="Port">The port on the loopback address; 0 for any that is free.</param>
/// <param name="Version">The version of the program, for the findings.</param>
public sealed record ServeOptions(string Folder, int Port, string Version)
{
    /// <summary>Makes the demonstration's study in a folder, and tells how many sessions are captured and of how many; null where the program has none.</summary>
    public Action<string, Action<int, int>, CancellationToken>? MakeDemonstration { get; init; }
}
