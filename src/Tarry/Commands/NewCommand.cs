using System.CommandLine;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry new</c>: makes a study.</summary>
internal static class NewCommand
{
    private const double DefaultMarginMs = 0.5;

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var title = new Option<string?>("--title") { Description = "Title of the study; the folder's name if not given." }.MustNotBeEmpty();
        var reference = new Option<string?>("--reference") { Description = "Id of the condition that is the rig itself acting as an input device." }.MustBeName();
        var margin = new Option<double>("--margin-ms")
        {
            Description = "The smallest difference that matters to a player, in milliseconds.",
            DefaultValueFactory = _ => DefaultMarginMs,
        }.TakesNumber(positive: true);
        var command = new Command("new", "Makes a study: a folder with a study file.\n\nExample: tarry new pads --title \"Three pads\" --reference bench-board")
        {
            study, title, reference, margin,
        };
        command.SetAction(parsed =>
        {
            var folder = parsed.GetRequiredValue(study);
            var made = Study.Create(
                folder,
                parsed.GetValue(title) ?? Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder))),
                parsed.GetValue(reference),
                parsed.GetValue(margin));
            terminal.Out.WriteLine($"Made {made.Folder}. Next: tarry condition {folder} ID --device ... --link ...");
            return ExitCode.Done;
        });
        return command;
    }
}
