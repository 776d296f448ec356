using System.CommandLine;
using System.Security.Cryptography;
using Tarry.Imports.Sticks;
using Tarry.Output;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Commands;

/// <summary><c>tarry stick take</c>: the positions of a stick out of a sealed session of reports.</summary>
internal static class StickTakeCommand
{
    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var session = new Argument<string>("SESSION") { Description = "The session of reports, as sitting.condition." };
        var sitting = new Option<string?>("--sitting") { Description = "The sitting of the new session; that of the reports if not given." }.MustBeName();
        var sticks = new StickOptions();
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would be taken; make nothing." };
        var command = new Command(
            "take",
            "Takes the positions of a stick out of a sealed session of the kind 'reports', which stays as it is.\n\nExample: tarry stick take pads monday-reports.quill-usb --procedure rest --sitting monday")
        {
            study, session, sitting, dryRun,
        };
        sticks.AddReportOptionsTo(command);
        command.SetAction(parsed =>
        {
            var opened = Study.Open(parsed.GetRequiredValue(study));
            var key = Key(parsed.GetRequiredValue(session));
            using var held = opened.AcquireLock("tarry stick take");
            var reports = opened.ReadReports(key);
            var target = sticks.Target(parsed, key.Condition, parsed.GetValue(sitting) ?? key.Sitting, opened.File.Conditions);
            var file = Path.Combine(opened.Folder, "sessions", key.ToString(), "reports.parquet");
            var plan = StickReportImport.Of(reports, key, sticks.Reports(parsed), target, $"sessions/{key}/reports.parquet", Hash(file), "reports");
            if (!parsed.GetValue(dryRun))
            {
                plan.AddTo(opened, held);
            }

            ImportText.Write(plan, terminal, parsed.GetValue(dryRun), explain: true);
            return ExitCode.Done;
        });
        return command;
    }

    private static SessionKey Key(string text)
    {
        try
        {
            return SessionKey.Parse(text);
        }
        catch (ArgumentException)
        {
            throw new UsageException($"'{text}' is not a session.", "Write it as sitting.condition, as 'tarry check STUDY' lists it.");
        }
    }

    private static string Hash(string file)
    {
        using var content = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(content));
    }
}
