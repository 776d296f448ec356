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
        var files = new Argument<string[]>("FILE") { Description = "Files to read. With --explain alone, STUDY may be left out: tarry import --explain FILE.", Arity = ArgumentArity.ZeroOrMore }.MustNotBeEmpty();
        var format = new Option<string?>("--format") { Description = "Format of the files; by their first bytes where not given, else csv." };
        format.AcceptOnlyFromAmong(["csv", .. PacketCaptureSource.Formats]);
        var columns = new DelimitedTextColumns();
        var captures = new PacketCaptureSource();
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would be read and refused; make nothing." };
        var explain = new Option<bool>("--explain") { Description = "Also say how the file was understood." };
        var command = new Command("import", "Takes recordings into a study: long-form CSV (condition,sitting,seq,press_time_us,latency_us,outcome and factor columns), or the reports of a device from a packet capture (pcap, pcapng, btsnoop).\n\nExamples: tarry import pads monday.csv --latency-column delay --latency-unit ms\n          tarry import pads pad.pcapng --condition quill-usb --sitting monday")
        {
            study, files, format, dryRun, explain,
        };
        columns.AddTo(command);
        captures.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                using var progress = new ProgressLine(terminal);
                var paths = parsed.GetValue(files) ?? [];
                if (paths.Length == 0)
                {
                    ExplainAlone(parsed.GetRequiredValue(study), parsed.GetValue(explain));
                    captures.Explain(parsed, parsed.GetRequiredValue(study), terminal, new ImportProgressLine(progress), cancellation);
                    return ExitCode.Done;
                }

                var opened = Study.Open(parsed.GetRequiredValue(study));
                var plans = PacketCaptureSource.Reads(parsed.GetValue(format), paths)
                    ? captures.Read(parsed, columns, paths, opened.File.Conditions, new ImportProgressLine(progress), cancellation)
                    : DelimitedTextImport.Read(paths, columns.Options(parsed), opened.File.Conditions, new ImportProgressLine(progress), cancellation);
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

                foreach (var plan in plans)
                {
                    ImportText.Write(plan, terminal, parsed.GetValue(dryRun), parsed.GetValue(explain));
                }

                return ExitCode.Done;
            },
            cancellation));
        return command;
    }

    private static void ExplainAlone(string file, bool explain)
    {
        if (!explain)
        {
            throw new UsageException("Required argument missing: FILE.", "Name the files to read: tarry import STUDY FILE...");
        }

        if (Directory.Exists(file))
        {
            throw new UsageException($"{file} is a folder, and no file is named.", "Name the file to explain: tarry import --explain FILE.");
        }
    }

    // Before anything is made, so that several files are taken in together or not at all.
    private static void RequireNew(Study study, IReadOnlyList<ImportPlan> plans)
    {
        var there = study.SessionKeys.Concat(study.ReportSessionKeys).ToHashSet();
        var taken = plans.SelectMany(plan => plan.Keys).Where(there.Contains).ToList();
        if (taken.Count > 0)
        {
            throw new UsageException(
                $"The study has {string.Join(", ", taken)} already; nothing was imported.",
                "Import under another sitting (--sitting, or the sitting column).");
        }
    }
}
