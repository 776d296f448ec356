using Tarry.Imports.Audio;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Imports.UsbWire;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Imports;

/// <summary>Reads files of any format that an import takes.</summary>
public static class ImportReading
{
    /// <summary>Reads the files completely and says what they would add to a study; nothing is written.</summary>
    /// <param name="request">The files and how to read them.</param>
    /// <param name="study">The study that they would be added to.</param>
    /// <param name="progress">Told now and then how far it has come.</param>
    /// <param name="cancellation">Stops the reading; nothing is left behind.</param>
    /// <returns>One plan a file, in the order given.</returns>
    /// <exception cref="ImportException">Nothing could be kept, the options fit neither the file nor each other, or something that the file does not say is not given.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static IReadOnlyList<ImportPlan> Read(
        ImportRequest request, Study study, IProgress<ImportProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(study);
        foreach (var file in request.Files)
        {
            ImportFormat.RequireReadable(file);
        }

        if (request.Format != ImportFormat.LongForm || request.Stick is not null)
        {
            RequireOne(request.Files);
        }

        try
        {
            return request switch
            {
                { Stick: { } stick } => [StickPlan(request, stick, study, progress, cancellation)],
                { Format: ImportFormat.LongForm } => DelimitedTextImport.Read(request.Files, request.Text, study.File.Conditions, progress, cancellation),
                _ => [OneSession(request, study, progress, cancellation)],
            };
        }
        catch (ArgumentException contradiction)
        {
            // The name of our parameter says nothing to whoever gave an option.
            throw new ImportException(
                contradiction.Message.Split(" (Parameter '")[0], Path.GetFileName(request.Files[0]), "Change the option that the message names.", contradiction);
        }
    }

    private static ImportPlan OneSession(ImportRequest request, Study study, IProgress<ImportProgress>? progress, CancellationToken cancellation)
    {
        var file = request.Files[0];
        return request.Format switch
        {
            ImportFormat.Logic when request.Cable is { } cable =>
                PacketCaptureImport.Of(UsbCableRecording.Read(file, cable, progress, cancellation), CaptureOptions(request, study), study.File.Conditions),
            ImportFormat.Logic => ValueChangeDumpImport.Read(file, request.Logic, Target(request, study, null), progress, cancellation),
            ImportFormat.Sound => TwoChannelImport.Read(file, request.Sound, Target(request, study, null), progress, cancellation),
            ImportFormat.Video => VideoImport.Read(file, RequireVideo(request), Target(request, study, null), progress, cancellation),
            _ => PacketCaptureImport.Read(file, CaptureOptions(request, study), study.File.Conditions, progress, cancellation),
        };
    }

    private static ImportPlan StickPlan(ImportRequest request, StickReading stick, Study study, IProgress<ImportProgress>? progress, CancellationToken cancellation)
    {
        var target = Target(request, study, stick.Procedure);
        var name = Path.GetFileName(request.Files[0]);
        if (request.Format == ImportFormat.LongForm)
        {
            return StickTableImport.Read(
                request.Files[0],
                stick.Table ?? throw new ImportException(
                    "The range of the axes is not known: a table does not say it.", name, "Give --x-range MIN..MAX, the least and greatest count that the device can say, such as 0..255."),
                target,
                progress,
                cancellation);
        }

        if (request.Cable is null && !ImportFormat.Captures.Contains(request.Format))
        {
            throw new ImportException($"The file is {request.Format}, which holds no positions of a stick.", name, "Give a table (CSV) or a packet capture.");
        }

        var plan = OneSession(request, study, progress, cancellation);
        return plan.ReportSessions is [var reports]
            ? StickReportImport.Of(reports, null, stick.Reports, target, plan.Record.FileName, plan.Record.Sha256, plan.Record.Format)
            : throw new ImportException("A marked press gives latencies, and no positions.", name, "Leave --marker or --kind out.");
    }

    private static PacketCaptureOptions CaptureOptions(ImportRequest request, Study study)
    {
        if (request.Presses is not { } name)
        {
            return request.Capture;
        }

        var file = Path.GetFileName(request.Files[0]);
        if (request.Capture.Marker is not null)
        {
            throw new ImportException("Presses are given twice: by a marker in the capture and by a rig.", file, "Give --marker or --presses.");
        }

        var key = study.SessionKeys.FirstOrDefault(known => known.ToString() == name);
        return request.Capture with
        {
            Presses = key != default ? RigPresses.Of(name, study.Read(key))
                : File.Exists(name) ? RigPresses.Read(name)
                : throw new ImportException($"'{name}' is no session of the study with presses, and no file.", file, "Give --presses SITTING.CONDITION, or a long-form CSV."),
        };
    }

    private static void RequireOne(IReadOnlyList<string> files)
    {
        if (files.Count > 1)
        {
            throw new ImportException(
                "A recording is one session, and several are given.", Path.GetFileName(files[1]), "Import one recording at a time, each with its --condition and --sitting.");
        }
    }

    private static VideoOptions RequireVideo(ImportRequest request) => request.Video ?? throw new ImportException(
        "The camera's capture rate is not known: the time stamps of slow motion say how it is played.",
        Path.GetFileName(request.Files[0]),
        "Give --capture-fps with the rate that the camera was set to.");

    private static RecordingTarget Target(ImportRequest request, Study study, StickProcedure? procedure)
    {
        var file = Path.GetFileName(request.Files[0]);
        if (request.Text.Condition is not { } condition || request.Text.Sitting is not { } sitting)
        {
            throw new ImportException("A recording does not say what was recorded.", file, "Give --condition ID and --sitting ID.");
        }

        foreach (var name in new[] { condition, sitting }.Where(name => !Names.IsName(name)))
        {
            throw new ImportException($"'{name}' is not a name.", file, "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.");
        }

        return new RecordingTarget(procedure is { } done ? new SessionKey(sitting, condition, done) : new SessionKey(sitting, condition), study.File.Conditions);
    }
}
