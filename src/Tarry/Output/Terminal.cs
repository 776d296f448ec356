using System.Text;
using Spectre.Console;

namespace Tarry.Output;

/// <summary>Where a command writes: answers to one stream, errors and progress to the other.</summary>
/// <param name="Out">Answers.</param>
/// <param name="Error">Errors and progress.</param>
/// <param name="ShowsProgress">Whether somebody watches the error stream.</param>
/// <param name="OutIsTerminal">Whether somebody watches the answers.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, bool ShowsProgress, bool OutIsTerminal)
{
    // Wide enough for the headline table where nothing tells the width.
    private const int RedirectedWidth = 200;

    public static Terminal OfThisProcess()
    {
        // Titles, names and the minus sign are not in every code page of a Windows console.
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        return new(Console.Out, Console.Error, !Console.IsErrorRedirected, !Console.IsOutputRedirected);
    }

    /// <summary>A console for tables: colour only on a terminal, and none where NO_COLOR is set.</summary>
    public IAnsiConsole Tables()
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(Out),
            Ansi = OutIsTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = OutIsTerminal ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        if (!OutIsTerminal)
        {
            console.Profile.Width = RedirectedWidth;
        }

        return console;
    }
}
