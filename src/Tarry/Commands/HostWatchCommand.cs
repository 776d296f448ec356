using System.CommandLine;
using Tarry.Output;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Watching;

namespace Tarry.Commands;

/// <summary><c>tarry host watch</c>: report intervals as they come.</summary>
internal static class HostWatchCommand
{
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(50);
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(500);

    public static Command Create(Terminal terminal)
    {
        var device = HostCommand.DeviceArgument();
        var seconds = new Option<double?>("--seconds") { Description = "Stop after this long; else Ctrl-C ends it." }.TakesNumber(positive: true);
        var reports = new Option<long?>("--reports") { Description = "Stop after this many reports." };
        var exclusive = new Option<bool>("--exclusive") { Description = "Keep its events from other programs meanwhile (Linux evdev)." };
        var json = new Option<bool>("--json") { Description = "Answer as JSON, one line twice a second." };
        var command = new Command(
            "watch",
            "Shows how a device's reports are spaced, live: count, median, p99, missed, doubled, and at the end the histogram. Keep it\n"
            + "moving (circle a stick, shake a mouse): a device at rest tells nothing. Nothing of what it tells is kept.\n\n"
            + "Example: tarry host watch /dev/input/event7 --seconds 20")
        {
            device, seconds, reports, exclusive, json,
        };
        command.SetAction((parsed, cancellation) => Task.Run(() =>
        {
            using var opened = HostInput.OfThisMachine().Open(parsed.GetRequiredValue(device), parsed.GetValue(exclusive));
            var intervals = new ReportIntervals();
            using var line = new ProgressLine(terminal);
            IProgress<ReportIntervalsSoFar> progress = parsed.GetValue(json) ? new HostWatchJson(terminal, opened) : new HostWatchLine(line);
            var time = TimeProvider.System;
            var start = time.GetTimestamp();
            var looked = start;
            var there = true;
            while (there && !cancellation.IsCancellationRequested
                && !(time.GetElapsedTime(start).TotalSeconds >= parsed.GetValue(seconds))
                && !(intervals.Reports >= parsed.GetValue(reports)))
            {
                there = opened.Read(Turn, report => intervals.Add(report.StampNanoseconds, report.FollowsALoss));
                if (time.GetElapsedTime(looked) >= BetweenLooks)
                {
                    looked = time.GetTimestamp();
                    progress.Report(intervals.SoFar());
                }
            }

            line.Clear();
            if (parsed.GetValue(json))
            {
                progress.Report(intervals.SoFar());
            }
            else
            {
                HostInputText.Write(opened, intervals, terminal);
            }

            return there ? ExitCode.Done : Gone(terminal, opened);
        }));
        return command;
    }

    private static int Gone(Terminal terminal, IHostInputDevice device)
    {
        terminal.Error.WriteLine($"tarry: {device.Description.Path} is gone: unplugged, or switched off. What came before is shown.");
        return ExitCode.RigOrDiskFailed;
    }
}
