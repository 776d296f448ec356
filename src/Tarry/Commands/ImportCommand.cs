using System.CommandLine;
using System.CommandLine.Help;
using Tarry.Imports;
using Tarry.Output;
using Tarry.Studies;

namespace Tarry.Commands;

/// <summary><c>tarry import</c>: takes recordings into a study.</summary>
internal static class ImportCommand
{
    private const string Latency = "latency";
    private const string Stick = "stick";

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var files = new Argument<string[]>("FILE") { Description = "Files to read. With --explain alone, STUDY may be left out: tarry import --explain FILE.", Arity = ArgumentArity.ZeroOrMore }.MustNotBeEmpty();
        var format = new Option<string?>("--format") { Description = "Format of the files: csv (long form), vcd (logic analyser), wav (sound), video (brightness of frames), or pcap, pcapng or btsnoop (packet captures). Told from the file if not given." };
        format.AcceptOnlyFromAmong([.. ImportFormat.All]);
        var columns = new DelimitedTextColumns();
        var recording = new RecordingOptions();
        var captures = new PacketCaptureSource();
        var kind = new Option<string>("--kind") { Description = "What the files hold: latency (presses and responses, or all reports of a packet capture), or stick (the positions of a stick).", DefaultValueFactory = _ => Latency };
        kind.AcceptOnlyFromAmong(Latency, Stick);
        var sticks = new StickOptions();
        var correction = new Option<string?>("--correction") { Description = "Why these sessions take the place of sealed ones of the same names, such as a wrong range that was stated. Those stay in the study, and are read no more." }.MustNotBeEmpty();
        var dryRun = new Option<bool>("--dry-run") { Description = "Say what would be read and refused; make nothing." };
        var explain = new Option<bool>("--explain") { Description = "Also say how the file was understood." };
        var command = new Command("import", "Takes long-form CSV into a study: condition,sitting,seq,press_time_us,latency_us,outcome and factor columns. Or a recording of one session: of a logic analyser (VCD), of sound (WAV), the brightness of video frames (CSV), or the reports of a device from a packet capture (pcap, pcapng, btsnoop).\n\nExamples: tarry import pads monday.csv --latency-column delay --latency-unit ms\n          tarry import pads bench.vcd --condition quill-usb --sitting monday --press-channel contact --response-channel lamp\n          tarry import pads pad.pcapng --condition quill-usb --sitting monday\n          tarry import pads rim.csv --kind stick --procedure rim-sweep --x-range 0..255 --condition quill-usb --sitting monday")
        {
            study, files,
        };
        var profile = new ImportProfile();
        OptionGroup[] groups =
        [
            new("Any file", [format, kind, .. columns.Session, correction, dryRun, explain, .. profile.Options]),
            columns.Group,
            .. recording.Groups,
            .. captures.Groups,
            sticks.Group,
        ];
        foreach (var option in groups.SelectMany(group => group.Options))
        {
            command.Add(option);
        }

        command.Add(new HelpOption { Action = new GroupedHelp(terminal, groups) });
        // On a thread of its own: those of the pool follow a recording's channels and its hash.
        command.SetAction((given, cancellation) => Task.Factory.StartNew(
            () =>
            {
                using var progress = new ProgressLine(terminal);
                var told = new ImportProgressLine(progress);
                var paths = given.GetValue(files) ?? [];
                if (paths.Length == 0)
                {
                    var file = given.GetRequiredValue(study);
                    RequireExplain(file, given.GetValue(explain));
                    var lines = recording.Cable(given, captures.SpeedName(given));
                    if (lines is not null || ImportFormat.OfCapture(file) is not null)
                    {
                        captures.Explain(given, captures.Read(given, file, lines, told, cancellation), terminal);
                        return ExitCode.Done;
                    }

                    RequireDescriptor(file);
                    PacketCaptureSource.ExplainDescriptor(file, terminal);
                    return ExitCode.Done;
                }

                var parsed = profile.Completed(given, command, given.GetRequiredValue(study));
                foreach (var path in paths)
                {
                    ImportFormat.RequireReadable(path);
                }

                var opened = Study.Open(parsed.GetRequiredValue(study));
                var formats = paths.Select(path => parsed.GetValue(format) ?? ImportFormat.Of(path)).Distinct().ToList();
                RequireOne(formats);
                var cable = formats[0] == ImportFormat.Logic ? recording.Cable(parsed, captures.SpeedName(parsed)) : null;
                if (cable is not null && columns.Condition(parsed) is null && columns.Sitting(parsed) is null)
                {
                    var capture = captures.Read(parsed, paths[0], cable, told, cancellation);
                    progress.Clear();
                    captures.Explain(parsed, capture, terminal);
                    terminal.Error.WriteLine("Nothing was imported: give --condition ID and --sitting ID to take the reports into the study.");
                    return ExitCode.Done;
                }

                var plans = ImportReading.Read(
                    new ImportRequest
                    {
                        Files = paths,
                        Format = formats[0],
                        Text = columns.Options(parsed),
                        Logic = recording.Logic(parsed),
                        Cable = cable,
                        Sound = formats[0] == ImportFormat.Sound ? recording.Sound(parsed) : new(),
                        Video = recording.Video(parsed, columns.Options(parsed)),
                        Capture = captures.Options(parsed, columns),
                        Presses = cable is not null || ImportFormat.Captures.Contains(formats[0]) ? captures.Presses(parsed) : null,
                        Stick = parsed.GetValue(kind) == Stick
                            ? sticks.Reading(parsed, recording.TimeColumn(parsed), columns.Options(parsed), isTable: formats[0] == ImportFormat.LongForm)
                            : null,
                    },
                    opened,
                    told,
                    cancellation);
                if (!parsed.GetValue(dryRun))
                {
                    if (terminal.ShowsProgress)
                    {
                        progress.Show("writing what was read, and reading it back to compare");
                    }

                    using var held = opened.AcquireLock("tarry import");
                    ImportPlan.AddAll(plans, opened, held, replacing: parsed.GetValue(correction));
                }

                progress.Clear();
                profile.Save(parsed, opened.Folder);
                foreach (var plan in plans)
                {
                    ImportText.Write(plan, terminal, parsed.GetValue(dryRun), parsed.GetValue(explain));
                }

                return ExitCode.Done;
            },
            cancellation,
            TaskCreationOptions.LongRunning,
            TaskScheduler.Default));
        return command;
    }

    private static void RequireExplain(string file, bool explain)
    {
        if (!explain)
        {
            throw new UsageException("Required argument missing: FILE.", "Name the files to read: tarry import STUDY FILE...");
        }

        if (Directory.Exists(file))
        {
            throw new UsageException($"{file} is a folder, and no file is named.", "Name the file to explain: tarry import --explain FILE.");
        }

        ImportFormat.RequireReadable(file);
    }

    private static void RequireDescriptor(string file)
    {
        if (ImportFormat.Of(file) is var format && (format != ImportFormat.LongForm || file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)))
        {
            throw new UsageException($"{file} is {format}, and is explained as an import into a study.", "Name the study: tarry import STUDY FILE --dry-run --explain.");
        }
    }

    private static void RequireOne(List<string> formats)
    {
        if (formats.Count > 1)
        {
            throw new UsageException($"The files are of several formats: {string.Join(", ", formats)}.", "Import those of one format at a time.");
        }

    }
}
