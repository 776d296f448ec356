using System.Diagnostics;

namespace Tarry.Tests;

/// <summary>Another program, run to its end, and what it said.</summary>
internal static class OtherProgram
{
    /// <summary>Runs it, fails the test unless it ends with 0, and returns its standard output.</summary>
    public static async Task<string> Done(string program, string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)} gave {process.ExitCode}\n{await error}");
        return output;
    }
}
