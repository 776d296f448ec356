using Tarry.Imports.Audio;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.Recordings;
using Tarry.Imports.UsbWire;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports;

/// <summary>Reads files of any format that an import takes.</summary>
public static class ImportReading
{
    /// <summary>Reads the files completely and says what they would add to a study; nothing is written.</summary>
    /// <param name="request">The files and how to read them.</param>
    /// <param name="conditions">The conditions that the study has.</param>
    /// <param name="progress">Told now and then how far it has come.</param>
    /// <param name="cancellation">Stops the reading; nothing is left behind.</param>
    /// <returns>One plan a file, in the order given.</returns>
    /// <exception cref="ImportException">Nothing could be kept, the options fit neither the file nor each other, or something that the file does not say is not given.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static IReadOnlyList<ImportPlan> Read(
        ImportRequest request, IReadOnlyList<ConditionEntry> conditions, IProgress<ImportProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(conditions);
        foreach (var file in request.Files)
        {
            ImportFormat.RequireReadable(file);
        }

        if (request.Format != ImportFormat.LongForm)
        {
            RequireOne(request.Files);
        }

        try
        {
            return request.Format switch
            {
                ImportFormat.LongForm => DelimitedTextImport.Read(request.Files, request.Text, conditions, progress, cancellation),
                ImportFormat.Logic when request.Cable is { } cable =>
                    [PacketCaptureImport.Of(UsbCableRecording.Read(request.Files[0], cable, progress, cancellation), request.Capture, conditions)],
                ImportFormat.Logic => [ValueChangeDumpImport.Read(request.Files[0], request.Logic, Target(request, conditions), progress, cancellation)],
                ImportFormat.Sound => [TwoChannelImport.Read(request.Files[0], request.Sound, Target(request, conditions), progress, cancellation)],
                ImportFormat.Video => [VideoImport.Read(request.Files[0], RequireVideo(request), Target(request, conditions), progress, cancellation)],
                _ => [PacketCaptureImport.Read(request.Files[0], request.Capture, conditions, progress, cancellation)],
            };
        }
        catch (ArgumentException contradiction)
        {
            // The name of our parameter says nothing to whoever gave an option.
            throw new ImportException(
                contradiction.Message.Split(" (Parameter '")[0], Path.GetFileName(request.Files[0]), "Change the option that the message names.", contradiction);
        }
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

    private static RecordingTarget Target(ImportRequest request, IReadOnlyList<ConditionEntry> conditions)
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

        return new RecordingTarget(new SessionKey(sitting, condition), conditions);
    }
}
