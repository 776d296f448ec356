using System.CommandLine;
using Tarry.Imports;
using Tarry.Imports.DelimitedText;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry import</c>: takes recordings into a study.</summary>
internal static class ImportCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var files = new Argument<string[]>("FILE") { Description = "Files to read.", Arity = ArgumentArity.OneOrMore }.MustNotBeEmpty();
        var format = new Option<string?>("--format") { Description = "Format of the files: csv (long form), vcd (logic analyser), wav (sound) or video (brightness of frames). Told from the file if not given." };
        format.AcceptOnlyFromAmong(ImportFormat.All);
        var columns = new DelimitedTextColumns();
        var recording = new RecordingOptions();
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would be read and refused; make nothing." };
        var explain = new Option<bool>("--explain") { Description = "Also say how the file was understood." };
        var command = new Command("import", "Takes long-form CSV into a study: condition,sitting,seq,press_time_us,latency_us,outcome and factor columns. Or a recording of one session: of a logic analyser (VCD), of sound (WAV), or the brightness of video frames (CSV).\n\nExamples: tarry import pads monday.csv --latency-column delay --latency-unit ms\n          tarry import pads bench.vcd --condition quill-usb --sitting monday --press-channel contact --response-channel lamp")
        {
            study, files, format, dryRun, explain,
        };
        columns.AddTo(command);
        recording.AddTo(command);
        var profile = new ImportProfile();
        profile.AddTo(command);
        command.SetAction((given, cancellation) => Task.Run(
            () =>
            {
                var parsed = profile.Completed(given, command, given.GetRequiredValue(study));
                var opened = Study.Open(parsed.GetRequiredValue(study));
                using var progress = new ProgressLine(terminal);
                var told = new ImportProgressLine(progress);
                var paths = parsed.GetRequiredValue(files);
                var formats = paths.Select(path => parsed.GetValue(format) ?? ImportFormat.Of(path)).Distinct().ToList();
                RequireOne(paths, formats);
                if (formats[0] == ImportFormat.Logic && recording.Cable(parsed) is { } cable)
                {
                    RecordingImports.ShowCable(paths[0], cable, terminal, parsed.GetValue(explain), told, cancellation);
                    return ExitCode.Done;
                }

                var plans = formats[0] == ImportFormat.LongForm
                    ? DelimitedTextImport.Read(paths, columns.Options(parsed), opened.File.Conditions, told, cancellation)
                    : [RecordingImports.Read(formats[0], paths[0], recording, columns, parsed, opened, told, cancellation)];
                progress.Clear();
                if (!parsed.GetValue(dryRun))
                {
                    using var held = opened.AcquireLock("tarry import");
                    RequireNew(opened, plans);
                    foreach (var plan in plans)
                    {
                        plan.AddTo(opened, held);
                    }
                }

                profile.Save(parsed, opened.Folder);
                foreach (var plan in plans)
                {
                    ImportText.Write(plan, terminal, parsed.GetValue(dryRun), parsed.GetValue(explain));
                }

                return ExitCode.Done;
            },
            cancellation));
        return command;
    }

    private static void RequireOne(string[] paths, List<string> formats)
    {
        if (formats.Count > 1)
        {
            throw new UsageException($"The files are of several formats: {string.Join(", ", formats)}.", "Import those of one format at a time.");
        }

        if (paths.Length > 1 && formats[0] != ImportFormat.LongForm)
        {
            throw new UsageException("A recording is one session, and several are given.", "Import one recording at a time, each with its --condition and --sitting.");
        }
    }

    // Before anything is made, so that several files are taken in together or not at all.
    private static void RequireNew(Study study, IReadOnlyList<ImportPlan> plans)
    {
        var there = study.SessionKeys.ToHashSet();
        var taken = plans.SelectMany(plan => plan.Sessions).Select(session => session.Record.Key).Where(there.Contains).ToList();
        if (taken.Count > 0)
        {
            throw new UsageException(
                $"The study has {string.Join(", ", taken)} already; nothing was imported.",
                "Import under another sitting (--sitting, or the sitting column).");
        }
    }
}
