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
            Description = "STUDY A B: two conditions of one study. STUDY:A OTHER:B: a condition of one study against one of another, linked through the reference of both. STUDY alone with --factor.",
            Arity = new ArgumentArity(1, 3),
        };
        var factor = new Option<string?>("--factor") { Description = "All pairs of STUDY that differ in this factor alone: layer, link, placement, device_firmware, ..." };
        var json = new Option<bool>("--json") { Description = "The comparison as JSON (docs/comparison.schema.json); with --factor, that factor as in the findings (docs/findings.schema.json)." };
        var seed = SeedOption.Create();
        var command = new Command(
            "compare",
            "Sets two conditions against each other: difference with interval, verdict, what differs between them, what it would take.\n\n"
            + "Example: tarry compare pads quill-usb quill-dongle\n"
            + "Example, what a software layer costs: tarry compare pads --factor layer\n"
            + "Example, a retest after a firmware update: tarry compare retest:quill-usb pads:quill-usb")
        {
            names, factor, json, seed,
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                FindingsDocument Analyse(string folder) => StudyAnalysis.Run(Study.Open(folder), parsed.GetValue(seed), ProgramVersion.Text, cancellation);
                var what = parsed.GetRequiredValue(names);
                if (parsed.GetValue(factor) is { } name)
                {
                    WriteFactor(what, name, parsed.GetValue(json), Analyse, terminal);
                    return ExitCode.Done;
                }

                var contrast = Contrast(what, Analyse);
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

    private static void WriteFactor(string[] names, string name, bool asJson, Func<string, FindingsDocument> analyse, Terminal terminal)
    {
        if (names.Length != 1)
        {
            throw new UsageException("--factor takes a study alone.", $"Give: tarry compare STUDY --factor {name}");
        }

        var factors = analyse(names[0]).Factors ?? [];
        var factor = factors.FirstOrDefault(one => one.Factor == name) ?? throw new UsageException(
            $"No two conditions with data differ in '{name}' alone.",
            factors.Count == 0 ? "State the factors of the conditions with 'tarry condition'." : $"Give one of: {string.Join(", ", factors.Select(one => one.Factor))}.");
        if (asJson)
        {
            terminal.Out.Write(FactorsJson.Write(factor));
        }
        else
        {
            FactorsText.Write(factor, terminal);
        }
    }

    private static ContrastFinding Contrast(string[] names, Func<string, FindingsDocument> analyse)
    {
        if (names.Length == 1)
        {
            throw new UsageException("A study alone is nothing to compare.", "Give STUDY A B for two of its conditions, or STUDY --factor F for all that differ in a factor alone.");
        }

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
