using System.Text.RegularExpressions;
using Tarry.Findings.Contrasts;
using Tarry.Imports;
using Tarry.Reports.Publishing;
using Tarry.Rig;
using Tarry.Rig.HostEvents;
using Tarry.Rig.Runs;
using Tarry.Studies;

namespace Tarry.Output;

/// <summary>Turns what went wrong into a message with place and remedy, and an exit code.</summary>
internal static class Failure
{
    public static bool IsExpected(Exception exception) =>
        exception is StudyException or ImportException or RigException or HostInputException or RunSettingsException or UsageException or ContrastException
            or IOException or UnauthorizedAccessException or OperationCanceledException;

    public static int Report(Exception exception, Terminal terminal)
    {
        switch (exception)
        {
            case OperationCanceledException:
                terminal.Error.WriteLine("tarry: stopped");
                return ExitCode.Stopped;
            case StudyException study:
                Write(terminal, study.Message, study.Place, study.Remedy);
                return study switch
                {
                    StudyDiskException => ExitCode.RigOrDiskFailed,
                    StudyDamagedException => ExitCode.DataSaysNo,
                    _ => ExitCode.WrongUse,
                };
            case ImportException import:
                Write(terminal, import.Problem, import.Place, import.Remedy);
                return ExitCode.WrongUse;
            case UsageException usage:
                Write(terminal, usage.Message, null, usage.Remedy);
                return ExitCode.WrongUse;
            case ContrastException contrast:
                Write(terminal, contrast.Message, null, contrast.Remedy);
                return ExitCode.WrongUse;
            case RunSettingsException settings:
                Write(terminal, settings.Message, null, settings.Remedy);
                return ExitCode.WrongUse;
            case RigException rig:
                Write(terminal, rig.Message, null, rig.Remedy);
                return ExitCode.RigOrDiskFailed;
            case NotAFolderException folder:
                Write(terminal, folder.Message, null, folder.Remedy);
                return ExitCode.WrongUse;
            case HostInputException input:
                Write(terminal, input.Message, null, input.Remedy);
                return ExitCode.RigOrDiskFailed;
            default:
                Write(terminal, exception.Message, null, "See that the folder can be written and the disk has room, then try again.");
                return ExitCode.RigOrDiskFailed;
        }
    }

    /// <summary>A fault of the program itself.</summary>
    public static int ReportOwn(Exception exception, Terminal terminal)
    {
        Write(
            terminal,
            $"The program has a fault: {exception.GetType().Name}: {exception.Message}",
            exception.StackTrace?.Split('\n')[0].Trim(),
            "Please report it with the command that you gave; what was on the disk before is as it was. 'tarry check STUDY' looks at a study.");
        return ExitCode.RigOrDiskFailed;
    }

    // A short place, such as the folder '.', is in many a message by chance.
    private static bool Names(string message, string place) =>
        Regex.IsMatch(message, $@"(?<![^\s'""]){Regex.Escape(place)}(?![^\s'"":;,.])");

    private static void Write(Terminal terminal, string message, string? place, string remedy)
    {
        terminal.Error.WriteLine($"tarry: {message}");
        if (place is not null && !Names(message, place))
        {
            terminal.Error.WriteLine($"  where: {place}");
        }

        if (!message.Contains(remedy, StringComparison.Ordinal))
        {
            terminal.Error.WriteLine($"  what to do: {remedy}");
        }
    }
}
