using System.CommandLine;
using Tarry.Output;

namespace Tarry.Commands;

/// <summary><c>tarry completions</c>: a script that lets a shell complete this program's commands and options.</summary>
internal static class CompletionsCommand
{
    private static readonly string[] Shells = ["bash", "zsh", "fish", "pwsh"];

    public static Command Create(Terminal terminal)
    {
        var shell = new Argument<string>("SHELL") { Description = "bash, zsh, fish or pwsh." };
        shell.AcceptOnlyFromAmong(Shells);
        var command = new Command("completions", "Prints a script that lets the shell complete commands and options.\n\nExample: source <(tarry completions bash)")
        {
            shell,
        };
        command.SetAction(parsed =>
        {
            using var script = new StreamReader(typeof(CompletionsCommand).Assembly.GetManifestResourceStream($"tarry.{parsed.GetRequiredValue(shell)}")!);
            terminal.Out.Write(script.ReadToEnd().ReplaceLineEndings("\n"));
            return ExitCode.Done;
        });
        return command;
    }
}
