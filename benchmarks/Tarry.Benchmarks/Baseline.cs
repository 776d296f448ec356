using System.Diagnostics;
using System.Globalization;

namespace Tarry.Benchmarks;

/// <summary>The same statistics by a general-purpose program, timed by that program itself, reading and starting up not counted.</summary>
internal static class Baseline
{
    /// <summary>CPU seconds and checksum of each step; empty where the program or a library of it is missing.</summary>
    public static Dictionary<string, (double Seconds, double Checksum)> Run(string program, string script, params string[] data)
    {
        var steps = new Dictionary<string, (double, double)>();
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + script);
        using (var source = typeof(Baseline).Assembly.GetManifestResourceStream($"Tarry.Benchmarks.Baselines.{script}")!)
        using (var target = File.Create(file))
        {
            source.CopyTo(target);
        }

        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, [file, .. data]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            while (process.StandardOutput.ReadLine() is { } line)
            {
                var fields = line.Split('\t');
                steps[fields[0]] = (double.Parse(fields[1], CultureInfo.InvariantCulture), double.Parse(fields[2], CultureInfo.InvariantCulture));
            }

            process.WaitForExit();
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Console.Error.WriteLine($"{program} is not installed: its column stays empty.");
        }
        finally
        {
            File.Delete(file);
        }

        return steps;
    }
}
