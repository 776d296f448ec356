using System.CommandLine;
using Tarry.Imports.HidReports;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Output;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.HostEvents.Watching;
using Tarry.Rig.Link;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Commands;

/// <summary><c>tarry host record</c>: a device's reports, with their times, as a session of a study.</summary>
internal static class HostRecordCommand
{
    private static readonly TimeSpan Turn = TimeSpan.FromMilliseconds(50);
    private static readonly TimeSpan LevelTurn = TimeSpan.FromMilliseconds(5);

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var condition = new Option<string>("--condition") { Description = "Condition under test; declare it first.", Required = true }.MustBeName();
        var sitting = new Option<string>("--sitting") { Description = "This set-up of the bench, such as monday-reports.", Required = true }.MustBeName();
        var device = new Option<string?>("--device") { Description = "The device's path, as 'tarry host devices' lists it." }.MustNotBeEmpty();
        var seconds = new Option<double?>("--seconds") { Description = "Stop after this long; else Ctrl-C ends it." }.TakesNumber(positive: true);
        var reports = new Option<long?>("--reports") { Description = "Stop after this many reports." };
        var code = new Option<string[]>("--code") { Description = "A button or axis to record; may be given again. [default: all, but no keys]", AllowMultipleArgumentsPerToken = true };
        var keyboard = new Option<bool>("--allow-keyboard") { Description = "Record the chosen keys of a text keyboard." };
        var exclusive = new Option<bool>("--exclusive") { Description = "Keep its events from other programs meanwhile (Linux evdev)." };
        var recover = new Option<bool>("--recover") { Description = "Seal what a recording that broke off has left." };
        var sticks = new StickOptions();
        var port = new Option<string?>("--port") { Description = "Substitution: the serial port of the rig whose converter stands for the wiper of x, or 'simulated'." }.MustNotBeEmpty();
        var atLevel = new Option<double>("--level-seconds") { Description = "Substitution: how long each level stands.", DefaultValueFactory = _ => 0.5 }.TakesNumber(positive: true);
        var uncertainty = new Option<double?>("--stimulus-uncertainty") { Description = "Substitution: standard uncertainty of the levels, a share of the supply." }.TakesNumber();
        var command = new Command(
            "record",
            "Records a device's reports with their times as a session of the kind 'reports'. Keep the device moving. Ctrl-C ends the\n"
            + "recording and seals it; after a crash --recover seals what is there.\n\n"
            + "Caution: a recording holds what the device told: times, and the codes that are chosen. A text keyboard is refused unless you\n"
            + "say --allow-keyboard and name the keys with --code; only these are kept. Type nothing secret meanwhile, all the same.\n\n"
            + "With --procedure the recording becomes a session of a stick: 'tarry stick procedures' says what to do meanwhile.\n\n"
            + "With --procedure substitution the rig at --port goes through its levels meanwhile. Caution: 5 V on a 3.3 V device can destroy\n"
            + "it; the converter's reference is the device's own stick supply, measured first, and the wiper is lifted (docs/wiring.md).\n\n"
            + "Examples: tarry host record pads --condition quill-usb --sitting monday-reports --device /dev/input/event7 --seconds 30\n"
            + "          tarry host record pads --condition quill-usb --sitting monday --device /dev/hidraw3 --procedure rest --seconds 60")
        {
            study, condition, sitting, device, seconds, reports, code, keyboard, exclusive, recover, port, atLevel, uncertainty,
        };
        sticks.AddReportOptionsTo(command);
        command.SetAction((parsed, cancellation) => Task.Run(() =>
        {
            var opened = Study.Open(parsed.GetRequiredValue(study));
            var key = new SessionKey(parsed.GetRequiredValue(sitting), parsed.GetRequiredValue(condition), sticks.Procedure(parsed));
            using var held = opened.AcquireLock("tarry host record");
            var file = Path.Combine(parsed.GetRequiredValue(study), "recordings", $"{key}.txt");
            Require(opened, key, file, parsed.GetValue(recover));
            RequireRig(parsed.GetValue(port), key, parsed.GetValue(recover));
            if (!parsed.GetValue(recover))
            {
                var path = parsed.GetValue(device) ?? throw new UsageException("No device is given.", "Say --device DEVICE; 'tarry host devices' lists them.");
                using var input = HostInput.OfThisMachine().Open(path, parsed.GetValue(exclusive));
                var codes = Codes(input.Description, parsed.GetValue(code) ?? [], parsed.GetValue(keyboard));
                Directory.CreateDirectory(Path.GetDirectoryName(file)!);
                using var levels = Levels(parsed.GetValue(port), parsed.GetValue(atLevel), input, cancellation);
                if (Record(terminal, input, codes, file, parsed.GetValue(seconds), parsed.GetValue(reports), levels, cancellation) == 0)
                {
                    File.Delete(file);
                    throw new HostInputException($"{path} told nothing while it was recorded, and nothing was kept.", "Move it meanwhile: circle a stick, press the button.");
                }
            }

            var (session, import) = RecordedSession.Read(file, key, FieldsOf);
            if (key.Procedure is not null)
            {
                SealStick(terminal, opened, held, session, import, WithLevels(WithRanges(sticks.Reports(parsed), RecordedSession.AxesOf(file)), file, parsed.GetValue(uncertainty)));
                return ExitCode.Done;
            }

            opened.SealImported(held, [session], import, []);
            terminal.Out.WriteLine(FormattableString.Invariant($"{key}: {session.Reports.Count} reports sealed, {session.Record.RefusedTotal} lines refused. The recording stays in recordings/."));
            foreach (var text in session.Record.Events)
            {
                terminal.Out.WriteLine($"  {text}");
            }

            return ExitCode.Done;
        }));
        return command;
    }

    private static void SealStick(Terminal terminal, Study study, StudyLock held, ReportSession session, ImportRecord import, StickReportOptions options)
    {
        var plan = StickReportImport.Of(session, null, options, new RecordingTarget(session.Record.Key, study.File.Conditions), import.FileName, import.Sha256, import.Format);
        plan.AddTo(study, held);
        ImportText.Write(plan, terminal, dryRun: false, explain: true);
    }

    private static void RequireRig(string? port, SessionKey key, bool recovers)
    {
        var substitutes = key.Procedure == StickProcedure.Substitution;
        if (substitutes != port is not null && !recovers)
        {
            throw new UsageException(
                substitutes ? "A substitution needs the rig that sets the levels." : "The rig sets levels in a substitution only.",
                substitutes ? "Say --port PORT; 'tarry rig ports' lists them." : "Leave --port out, or say --procedure substitution.");
        }
    }

    private static LevelSteps? Levels(string? port, double secondsAtLevel, IHostInputDevice input, CancellationToken cancellation) => port is null ? null : LevelSteps.Open(
        port == SimulatedDefault.Port ? new SimulatedRigPortSource(SimulatedDefault.Loop, SimulatedDefault.Rig(1)) : new SerialRigPortSource(port),
        secondsAtLevel,
        () => input.Clock.Now(TimeProvider.System),
        cancellation);

    /// <summary>A report that came while the rig was asked may be stamped as late as it took: what it saw is not known.</summary>
    private static StickReportOptions WithLevels(StickReportOptions options, string file, double? uncertainty)
    {
        const long guardNanoseconds = 2_000_000;
        return options with
        {
            Levels =
            [
                .. RecordedSession.LevelsOf(file).Select(level => new LevelChange(
                    level.Before - guardNanoseconds, level.After + (level.After - level.Before) + guardNanoseconds, level.Level / (double)ushort.MaxValue)),
            ],
            LevelUncertainty = uncertainty,
        };
    }

    /// <summary>The ranges that the device stated, where the user states none: those of the named fields, else of the first two axes.</summary>
    private static StickReportOptions WithRanges(StickReportOptions options, IReadOnlyList<RecordedAxis> axes)
    {
        StickRange? Of(string column) => axes.FirstOrDefault(axis => axis.Column == column) is { } axis ? new StickRange(axis.Minimum, axis.Maximum, 1) : null;
        return options with { X = options.X ?? Of(options.XField ?? "abs_x"), Y = options.Y ?? Of(options.YField ?? "abs_y") };
    }

    private static void Require(Study study, SessionKey key, string file, bool recovers)
    {
        if (study.File.Conditions.All(condition => condition.Id != key.Condition))
        {
            throw new UsageException($"The condition {key.Condition} is not declared.", $"Declare it with: tarry condition STUDY {key.Condition}");
        }

        if (study.SessionKeys.Contains(key) || study.ReportSessionKeys.Contains(key) || study.StickKeys.Contains(key))
        {
            throw new UsageException($"The session {key} is there already.", "Record into another sitting; what is sealed never changes.");
        }

        if (File.Exists(file) != recovers)
        {
            throw new UsageException(
                recovers ? $"There is no recording {file} to recover." : $"A recording of {key} that broke off is there: {file}",
                recovers ? "Leave --recover out." : "Seal what it holds with --recover, or remove it.");
        }
    }

    private static IReadOnlyList<RecordedCode> Codes(HostInputDescription device, string[] names, bool allowKeyboard)
    {
        var givesBytes = device is { Buttons.Count: 0, Axes.Count: 0, IsRelative: false, IsTextKeyboard: false } or { ReportDescriptor.IsEmpty: false };
        if (device.IsTextKeyboard && (!allowKeyboard || names.Length == 0 || givesBytes))
        {
            throw new UsageException(
                $"{device.Path} is a text keyboard, and what is recorded of it can be what somebody types.",
                givesBytes
                    ? "Its raw reports are not recorded. Take its event device, with --allow-keyboard and the keys under test."
                    : "If you mean it, say --allow-keyboard and name the keys under test with --code, such as --code KEY_SPACE.");
        }

        return givesBytes ? [] : names.Length > 0 ? RecordedCode.Parse(device, names) : RecordedCode.AllOf(device);
    }

    private static long Record(
        Terminal terminal, IHostInputDevice device, IReadOnlyList<RecordedCode> codes, string file, double? seconds, long? reports, LevelSteps? levels, CancellationToken cancellation)
    {
        using var recording = new RecordingFile(file, RecordingHeader.Of(device, codes));
        var state = new ReportState(codes, device.Description.Axes);
        var intervals = new ReportIntervals();
        using var line = new ProgressLine(terminal);
        var progress = new HostWatchLine(line);
        var time = TimeProvider.System;
        var start = time.GetTimestamp();
        var there = true;
        var goesOn = true;
        while (there && goesOn && !cancellation.IsCancellationRequested
            && !(time.GetElapsedTime(start).TotalSeconds >= seconds) && !(intervals.Reports >= reports))
        {
            there = device.Read(levels is null ? Turn : LevelTurn, report =>
            {
                var bytes = codes.Count > 0 ? state.Take(report) : report.Bytes;
                if (!bytes.IsEmpty && !(intervals.Reports >= reports))
                {
                    recording.Add(report.StampNanoseconds, bytes);
                    intervals.Add(report.StampNanoseconds, report.FollowsALoss);
                }
            });
            goesOn = levels?.Step(time.GetElapsedTime(start).TotalSeconds, recording) ?? true;
            recording.RequireSound();
            progress.Report(intervals.SoFar());
        }

        if (device.Losses > 0)
        {
            recording.AddEvent(FormattableString.Invariant($"the system lost reports {device.Losses} times, because they were not read in time"));
        }

        if (!there)
        {
            recording.AddEvent("the device went: unplugged, or switched off");
        }

        line.Clear();
        return intervals.Reports;
    }

    private static (IReadOnlyList<ReportField> Fields, bool IdIsFirstByte) FieldsOf(ReadOnlyMemory<byte> bytes)
    {
        var descriptor = HidReportDescriptor.Parse(bytes.Span);
        return (HidReportFields.Of(descriptor, endpoint: 0, descriptor.UsesReportIds).Fields, descriptor.UsesReportIds);
    }
}
