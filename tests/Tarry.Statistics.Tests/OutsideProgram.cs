using System.Diagnostics;
using System.Globalization;
using Tarry.Tests;

namespace Tarry.Statistics.Tests;

/// <summary>A general-purpose reference library run on the inputs of a test; what it prints is what we must find.</summary>
internal static class OutsideProgram
{
    /// <summary>Runs R; the script finds the inputs in the numeric vector <c>x</c> and prints numbers.</summary>
    public static double[] R(string script, params ReadOnlySpan<double> inputs) =>
        Run(Requirement.Program("Rscript", "r-base-core"), "-e", $"options(digits=17); x <- scan(commandArgs(TRUE)[1], quiet=TRUE); p <- function(...) cat(sprintf('%.17g', c(...)), sep='\\n', fill=FALSE, '\\n'); {script}", inputs);

    /// <summary>Runs SciPy; the script finds the inputs in the array <c>x</c> and prints numbers.</summary>
    public static double[] SciPy(string script, params ReadOnlySpan<double> inputs)
    {
        const string python = "/usr/bin/python3";
        Requirement.Needs(File.Exists(python) && Directory.Exists("/usr/lib/python3/dist-packages/scipy"), "SciPy (Debian package python3-scipy)");
        return Run(python, "-c", $"import sys, numpy as np\nfrom scipy import stats\nx = np.loadtxt(sys.argv[1], ndmin=1)\ndef p(*a):\n  for v in np.concatenate([np.ravel(b) for b in a]): print(repr(float(v)))\n{script}", inputs);
    }

    private static double[] Run(string program, string option, string script, ReadOnlySpan<double> inputs)
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".txt");
        try
        {
            File.WriteAllLines(file, inputs.ToArray().Select(value => value.ToString("R", CultureInfo.InvariantCulture)));
            using var process = Process.Start(new ProcessStartInfo(program, [option, script, file])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            var errors = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, $"{program} failed: {errors.Result}");
            return [.. output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(Number)];
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static double Number(string text) => text switch
    {
        "Inf" or "inf" => double.PositiveInfinity,
        _ => double.Parse(text, CultureInfo.InvariantCulture),
    };
}
