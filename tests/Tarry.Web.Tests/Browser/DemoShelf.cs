using System.Diagnostics;

namespace Tarry.Web.Tests.Browser;

/// <summary>A served folder with the demo study in it, for tests that only look. Those that change something serve a folder of their own.</summary>
public sealed class DemoShelf : IAsyncLifetime
{
    private ServedFolder? served;

    /// <summary>The demo study's name on the shelf.</summary>
    public const string Study = "demo";

    /// <summary>The folder of studies.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("tarry-shelf-").FullName;

    /// <summary>The address of a page.</summary>
    public Uri At(string page) => new(served!.Address, page);

    public async ValueTask InitializeAsync()
    {
        using var demo = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "tarry.dll"), "demo", "--out", Path.Combine(Folder, Study)])
        {
            RedirectStandardOutput = true,
        })!;
        await demo.StandardOutput.ReadToEndAsync();
        await demo.WaitForExitAsync();
        served = await ServedFolder.Start(Folder);
    }

    public async ValueTask DisposeAsync()
    {
        await served!.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}
