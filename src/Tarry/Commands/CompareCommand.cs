using System.CommandLine;
using Tarry.Findings;
using Tarry.Findings.Contrasts;
using Tarry.Findings.Json;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry compare</c>: two conditions of one study, or of two that share a reference.</summary>
internal static class CompareCommand
{
    public static Command Create(Terminal terminal)
    {
        var names = new Argument<string[]>("WHAT")
        {
            Description = "STUDY A B: two conditions of one study. STUDY:A OTHER:B: a condition of one study against one of another, linked through the reference of both.",
            Arity = new ArgumentArity(2, 3),
        };
        var json = new Option<bool>("--json") { Description = "The comparison as JSON (docs/comparison.schema.json)." };
        var seed = SeedOption.Create();
        var command = new Command(
            "compare",
            "Sets two conditions against each other: difference with interval, verdict, what differs between them, what it would take.\n\n"
            + "Example: tarry compare pads quill-usb quill-dongle\n"
            + "Example, a retest after a firmware update: tarry compare retest:quill-usb pads:quill-usb")
        {
            names, json, seed,
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var contrast = Contrast(parsed.GetRequiredValue(names), folder => StudyAnalysis.Run(Study.Open(folder), parsed.GetValue(seed), ProgramVersion.Text, cancellation));
                if (parsed.GetValue(json))
                {
                    terminal.Out.Write(ContrastJson.Write(contrast));
                }
                else
                {
                    ContrastText.Write(contrast, terminal);
                }

                return ExitCode.Done;
            },
            cancellation));
        return command;
    }

    private static ContrastFinding Contrast(string[] names, Func<string, FindingsDocument> analyse)
    {
        if (names.Length == 3)
        {
            return WithinStudyContrast.Of(analyse(names[0]), names[1], names[2]);
        }

        var (a, b) = (Split(names[0]), Split(names[1]));
        return Path.GetFullPath(a.Folder) == Path.GetFullPath(b.Folder)
            ? WithinStudyContrast.Of(analyse(a.Folder), a.Condition, b.Condition)
            : LinkedContrast.Of(analyse(a.Folder), a.Condition, analyse(b.Folder), b.Condition);
    }

    // The last colon, because a folder of Windows may begin with a drive.
    private static (string Folder, string Condition) Split(string text)
    {
        var colon = text.LastIndexOf(':');
        return colon > 0 && colon < text.Length - 1
            ? (text[..colon], text[(colon + 1)..])
            : throw new UsageException(
                $"'{text}' is not a condition of a study.",
                "Give STUDY A B for two conditions of one study, or STUDY:A OTHER:B for conditions of two.");
    }
}
