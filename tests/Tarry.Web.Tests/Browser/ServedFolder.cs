using System.Diagnostics;

namespace Tarry.Web.Tests.Browser;

/// <summary><c>tarry serve</c> on a folder, as a user starts it: its own process on a free port.</summary>
internal sealed class ServedFolder : IAsyncDisposable
{
    private readonly Process process;

    private ServedFolder(Process process, string folder, Uri address) => (this.process, Folder, Address) = (process, folder, address);

    /// <summary>The folder of studies.</summary>
    public string Folder { get; }

    /// <summary>Where it answers.</summary>
    public Uri Address { get; }

    /// <summary>Starts it.</summary>
    /// <param name="folder">The folder of studies.</param>
    /// <param name="port">The port; 0 for any.</param>
    public static async Task<ServedFolder> Start(string folder, int port = 0)
    {
        var start = new ProcessStartInfo("dotnet", [Program, "serve", folder, "--no-open", "--port", port.ToString(System.Globalization.CultureInfo.InvariantCulture)])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var address = await process.StandardOutput.ReadLineAsync();
        return address is not null
            ? new ServedFolder(process, folder, new Uri(address))
            : throw new InvalidOperationException($"tarry serve did not start: {await errors}");
    }

    /// <summary>Kills it as a power cut would.</summary>
    public async Task Kill()
    {
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
        {
            await Kill();
        }

        process.Dispose();
    }

    private static string Program => Path.Combine(AppContext.BaseDirectory, "tarry.dll");
}
