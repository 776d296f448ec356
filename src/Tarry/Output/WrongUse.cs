using System.CommandLine;

namespace Tarry.Output;

/// <summary>Says what is wrong with a command line, on the error stream, and where its help is.</summary>
internal static class WrongUse
{
    public static int Report(ParseResult parsed, Terminal terminal)
    {
        foreach (var error in parsed.Errors)
        {
            terminal.Error.WriteLine($"tarry: {error.Message}");
        }

        var command = parsed.CommandResult.Command;
        var name = command is RootCommand ? "tarry" : $"tarry {command.Name}";
        terminal.Error.WriteLine($"  what to do: see '{name} --help'.");
        return ExitCode.WrongUse;
    }
}
