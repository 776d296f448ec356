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
        var format = new Option<string>("--format") { Description = "Format of the files.", DefaultValueFactory = _ => "csv" };
        format.AcceptOnlyFromAmong("csv");
        var columns = new DelimitedTextColumns();
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would be read and refused; make nothing." };
        var explain = new Option<bool>("--explain") { Description = "Also say how the file was understood." };
        var command = new Command("import", "Takes long-form CSV into a study: condition,sitting,seq,press_time_us,latency_us,outcome and factor columns.\n\nExample: tarry import pads monday.csv --latency-column delay --latency-unit ms")
        {
            study, files, format, dryRun, explain,
        };
        columns.AddTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var opened = Study.Open(parsed.GetRequiredValue(study));
                using var progress = new ProgressLine(terminal);
                var plans = DelimitedTextImport.Read(
                    parsed.GetRequiredValue(files),
                    columns.Options(parsed),
                    opened.File.Conditions,
                    new ImportProgressLine(progress),
                    cancellation);
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
