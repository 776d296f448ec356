using System.CommandLine;
using Tarry.Imports;
using Tarry.Imports.Audio;
using Tarry.Imports.Recordings;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;
using Tarry.Output;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Commands;

/// <summary>Reads a recording in the format that it has.</summary>
internal static class RecordingImports
{
    /// <summary>The plan of one recording.</summary>
    public static ImportPlan Read(
        string format, string path, RecordingOptions options, DelimitedTextColumns columns, ParseResult parsed, Study study, IProgress<ImportProgress> progress, CancellationToken cancellation)
    {
        var text = columns.Options(parsed);
        if (text.Condition is not { } condition || text.Sitting is not { } sitting)
        {
            throw new UsageException("A recording does not say what was recorded.", "Give --condition ID and --sitting ID.");
        }

        foreach (var name in new[] { condition, sitting }.Where(name => !Names.IsName(name)))
        {
            throw new UsageException($"'{name}' is not a name.", "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.");
        }

        var target = new RecordingTarget(new SessionKey(sitting, condition), study.File.Conditions);
        try
        {
            return format switch
            {
                ImportFormat.Logic => ValueChangeDumpImport.Read(path, options.Logic(parsed), target, progress, cancellation),
                ImportFormat.Sound => TwoChannelImport.Read(path, options.Sound(parsed), target, progress, cancellation),
                _ => VideoImport.Read(path, options.Video(parsed, text.Delimiter), target, progress, cancellation),
            };
        }
        catch (ArgumentException contradiction)
        {
            // The name of our parameter says nothing to whoever gave an option.
            throw new UsageException(contradiction.Message.Split(" (Parameter '")[0], "Change the option that the message names.");
        }
    }
}
