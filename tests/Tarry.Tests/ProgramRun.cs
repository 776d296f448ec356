using Tarry.Output;

namespace Tarry.Tests;

/// <summary>The program, run in this process, and what it said.</summary>
internal sealed record ProgramRun(int ExitCode, string Out, string Error)
{
    public static async Task<ProgramRun> Tarry(params string[] arguments)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var exitCode = await CommandLine.RunAsync(arguments, new Terminal(output, error, ShowsProgress: false, OutIsTerminal: false));
        return new ProgramRun(exitCode, output.ToString(), error.ToString());
    }

    /// <summary>Runs it, and fails the test unless it is done.</summary>
    public static async Task<string> Done(params string[] arguments)
    {
        var run = await Tarry(arguments);
        Assert.True(run.ExitCode == Output.ExitCode.Done, $"tarry {string.Join(' ', arguments)} gave {run.ExitCode}\n{run.Error}");
        return run.Out;
    }
}
