using System.CommandLine;
using System.CommandLine.Invocation;
using Tarry.Output;

namespace Tarry.Commands;

/// <summary>The help of a command that has many options: by what they are for, each on a line of its own with what it does beneath.</summary>
/// <param name="terminal">Where it is written.</param>
/// <param name="groups">The groups, in order; each option of the command is in one.</param>
internal sealed class GroupedHelp(Terminal terminal, IReadOnlyList<OptionGroup> groups) : SynchronousCommandLineAction
{
    private const int Width = 100;
    private const string Indent = "      ";

    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        ArgumentNullException.ThrowIfNull(parseResult);
        var command = parseResult.CommandResult.Command;
        var arguments = command.Arguments.Select(argument => argument.Arity.MinimumNumberOfValues == 0 ? $"[<{argument.Name}>...]" : $"<{argument.Name}>");
        var description = (command.Description ?? "").Split("\n\n", 2);
        WriteWrapped(description[0], "");
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"Usage: tarry {command.Name} {string.Join(' ', arguments)} [options]");
        if (description.Length > 1)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine(description[1]);
        }

        foreach (var argument in command.Arguments)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine($"  <{argument.Name}>");
            WriteWrapped(argument.Description ?? "", Indent);
        }

        foreach (var group in groups)
        {
            terminal.Out.WriteLine();
            terminal.Out.WriteLine(group.Heading);
            foreach (var option in group.Options)
            {
                terminal.Out.WriteLine($"  {option.Name}{Value(option)}");
                WriteWrapped($"{option.Description}{Default(option)}", Indent);
            }
        }

        return ExitCode.Done;
    }

    // What is given is named after the last word of the option: --press-channel CHANNEL.
    private static string Value(Option option) =>
        option.ValueType == typeof(bool) ? "" : " " + (option.HelpName ?? option.Name.Split('-')[^1].ToUpperInvariant());

    private static string Default(Option option) => option.HasDefaultValue && option.ValueType != typeof(bool) && option.GetDefaultValue() is { } value and not Array
        ? FormattableString.Invariant($" [default: {(value is Enum ? $"{value}".ToLowerInvariant() : value)}]")
        : "";

    private void WriteWrapped(string text, string indent)
    {
        var line = indent;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > indent.Length && line.Length + 1 + word.Length > Width)
            {
                terminal.Out.WriteLine(line);
                line = indent;
            }

            line += line.Length > indent.Length ? " " + word : word;
        }

        terminal.Out.WriteLine(line);
    }
}
