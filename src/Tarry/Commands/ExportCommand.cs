using System.CommandLine;
using Tarry.Imports.LongForm;
using Tarry.Output;
using Tarry.Reports.Publishing;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry export</c>: writes the trials for other programs, or a package for publication.</summary>
internal static class ExportCommand
{
    private const string FirstVersion = "1.0.0";

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var format = new Option<string>("--format")
        {
            Description = "csv: long-form, one row a trial; under --out also a table for each session of reports or of a stick, and one that lists the recordings of sticks. parquet: the same. datapackage: both, with findings, also of sticks as a table, schema, checksums, README and scripts to recheck it.",
            DefaultValueFactory = _ => "csv",
        };
        format.AcceptOnlyFromAmong("csv", "parquet", "datapackage");
        var output = new Option<string?>("--out") { Description = "Folder to write to. If not given: csv goes to standard output, a data package to STUDY/package." }.MustNotBeEmpty();
        var licence = new Option<string?>("--licence") { Description = "Licence of a data package, by its SPDX identifier, such as CC-BY-4.0." };
        var author = new Option<string?>("--author") { Description = "Who publishes a data package, as it should be named." }.MustNotBeEmpty();
        var version = new Option<string>("--package-version") { Description = "Version of the publication.", DefaultValueFactory = _ => FirstVersion };
        var seed = SeedOption.Create();
        var command = new Command("export", "Writes every trial, with factors, flags and exclusions, every report and every position of a stick, for other programs, or a data package for publication. The positions of a stick are written as 'tarry import --kind stick' reads them.\n\nExample: tarry export pads --format datapackage --licence CC-BY-4.0 --out published")
        {
            study, format, output, licence, author, version, seed,
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var opened = Study.Open(parsed.GetRequiredValue(study));
                var folder = parsed.GetValue(output);
                switch (parsed.GetRequiredValue(format))
                {
                    case "parquet":
                        terminal.Out.WriteLine(WriteParquet(opened, folder, cancellation));
                        WriteRecordings(opened, folder!, parquet: true, terminal, cancellation);
                        break;
                    case "datapackage":
                        terminal.Out.WriteLine(PublishedPackage.Write(
                            opened, folder, parsed.GetValue(licence), parsed.GetValue(author), parsed.GetRequiredValue(version), parsed.GetValue(seed), terminal, cancellation));
                        break;
                    default:
                        WriteCsv(opened, folder, terminal, cancellation);
                        break;
                }

                return ExitCode.Done;
            },
            cancellation));
        return command;
    }

    private static string WriteParquet(Study study, string? folder, CancellationToken cancellation) => folder is null
        ? throw new UsageException("Parquet is not text, so it goes to a file.", "Give the folder to write it to: --out DIR.")
        : WholeFile.WriteBytes(Path.Combine(folder, "trials.parquet"), stream => StudyTrials.WriteParquet(study, stream, cancellation));

    private static void WriteCsv(Study study, string? folder, Terminal terminal, CancellationToken cancellation)
    {
        if (folder is null)
        {
            StudyTrials.WriteCsv(study, terminal.Out, cancellation);
            var (reports, sticks) = (study.ReportSessionKeys.Count, study.StickKeys.Count);
            if (reports + sticks > 0)
            {
                string[] there = [.. reports > 0 ? [Counted.Of(reports, "session") + " of reports"] : Array.Empty<string>(), .. sticks > 0 ? [Counted.Of(sticks, "session") + " of a stick"] : Array.Empty<string>()];
                terminal.Error.WriteLine($"tarry: the study has {string.Join(" and ", there)}, each a table of its own. Give a folder with --out to have them too.");
            }
        }
        else
        {
            terminal.Out.WriteLine(WholeFile.Write(Path.Combine(folder, "trials.csv"), writer => StudyTrials.WriteCsv(study, writer, cancellation)));
            WriteRecordings(study, folder, parquet: false, terminal, cancellation);
        }
    }

    private static void WriteRecordings(Study study, string folder, bool parquet, Terminal terminal, CancellationToken cancellation)
    {
        foreach (var path in ExportedRecordings.Write(study, folder, parquet, cancellation))
        {
            terminal.Out.WriteLine(path);
        }
    }
}
