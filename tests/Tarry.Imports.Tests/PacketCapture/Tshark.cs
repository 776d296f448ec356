using System.Diagnostics;
using System.Globalization;
using Tarry.Tests;

namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>The programs of Debian's tshark package: they make captures, and decode them independently of this code.</summary>
internal static class Tshark
{
    /// <summary>The values of fields, one row a packet that the filter takes; several values of one field are in one cell with commas.</summary>
    public static List<string[]> Fields(string file, string filter, params string[] fields) =>
        [.. Decode(file, filter, [], fields)];

    public static IEnumerable<string[]> Decode(string file, string filter, string[] options, params string[] fields) =>
        Run("tshark", ["-r", file, "-Y", filter, .. options, "-T", "fields", .. fields.SelectMany(field => new[] { "-e", field })])
            .Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Split('\t'));

    /// <summary>The seconds since 1970 that tshark prints, as nanoseconds.</summary>
    public static long Nanoseconds(string epoch) => (long)(decimal.Parse(epoch, CultureInfo.InvariantCulture) * 1_000_000_000m);

    public static string Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(Requirement.Program(program, "tshark"), arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} failed: {errors.Result}");
        return output;
    }
}
