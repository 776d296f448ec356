using System.CommandLine;
using Tarry.Demo;
using Tarry.Findings;
using Tarry.Output;
using Tarry.Reports.Publishing;
using static System.FormattableString;

namespace Tarry.Commands;

/// <summary><c>tarry demo</c>: the whole job on the simulated bench.</summary>
internal static class DemoCommand
{
    private const string DefaultFolder = "demo-study";

    public static Command Create(Terminal terminal)
    {
        var output = new Option<string?>("--out") { Description = $"Folder to make the study in; ./{DefaultFolder} if not given." }.MustNotBeEmpty();
        var seed = SeedOption.Create();
        var command = new Command("demo", "Runs the whole job on a simulated bench: capture, findings, report. No rig needed.\n\nExample: tarry demo --out demo-study --seed 1")
        {
            output, seed,
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                var folder = parsed.GetValue(output) ?? FreeFolder();
                using var line = new ProgressLine(terminal);
                var study = new DemoStudy(folder, parsed.GetValue(seed)).Capture(
                    (done, total, key) => line.Show(Invariant($"capturing {key} ({done + 1} of {total})")),
                    cancellation);
                line.Show("analysing");
                var document = StudyAnalysis.Run(study, parsed.GetValue(seed), ProgramVersion.Text, cancellation);
                var report = ReportFiles.Write(document, Path.Combine(folder, "report"));
                line.Clear();
                FindingsText.Write(document, terminal);
                terminal.Out.WriteLine();
                terminal.Out.WriteLine("Simulated bench, invented devices: nothing here is about a real one.");
                terminal.Out.WriteLine($"Study:  {Path.GetFullPath(folder)}");
                terminal.Out.WriteLine($"Report: {Path.GetFullPath(report)}");
                return ExitCode.Done;
            },
            cancellation));
        return command;
    }

    // A second demonstration does not touch the first.
    private static string FreeFolder() => Enumerable.Range(1, int.MaxValue)
        .Select(number => number == 1 ? DefaultFolder : Invariant($"{DefaultFolder}-{number}"))
        .First(folder => !Directory.Exists(folder));
}
