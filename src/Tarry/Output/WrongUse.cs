using System.CommandLine;
using System.Text.RegularExpressions;

namespace Tarry.Output;

/// <summary>Says what is wrong with a command line, on the error stream, and where its help is.</summary>
internal static partial class WrongUse
{
    public static int Report(ParseResult parsed, Terminal terminal)
    {
        foreach (var error in parsed.Errors)
        {
            terminal.Error.WriteLine($"tarry: {Plain(error.Message)}");
        }

        var command = parsed.CommandResult.Command;
        var name = command is RootCommand ? "tarry" : $"tarry {command.Name}";
        terminal.Error.WriteLine($"  what to do: see '{name} --help'.");
        return ExitCode.WrongUse;
    }

    // The library ends this message with the name of a type of the program, which tells a user nothing.
    private static string Plain(string message) => Unparsed().Replace(message, "'${value}' is not a value for ${option}.");

    [GeneratedRegex(@"\ACannot parse argument '(?<value>.*)' for (option|command) '(?<option>[^']*)' as expected type '.*'\.\z", RegexOptions.Singleline)]
    private static partial Regex Unparsed();
}
