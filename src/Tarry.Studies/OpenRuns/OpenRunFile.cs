using System.Text.Json;
using Tarry.Studies.Disk;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.OpenRuns;

/// <summary>Open runs on the disk: <c>open-runs/sitting.condition.json</c>. They are settings and not data: one that cannot be read is asked for again.</summary>
internal sealed record OpenRunFile
{
    public required int FormatVersion { get; init; }

    public required OpenRun OpenRun { get; init; }

    public static OpenRun? Read(StudyPaths paths, SessionKey key)
    {
        try
        {
            var file = StudyJson.Read<OpenRunFile>(File.ReadAllBytes(paths.OpenRun(key)));
            return file.FormatVersion <= Study.FormatVersion ? file.OpenRun : null;
        }
        catch (Exception exception) when (DiskFault.Is(exception) || exception is JsonException)
        {
            return null;
        }
    }

    public static void Write(StudyPaths paths, SessionKey key, OpenRun run)
    {
        try
        {
            DurableFile.MakeFolder(paths.OpenRuns);
            DurableFile.Write(paths.OpenRun(key), StudyJson.File(new OpenRunFile { FormatVersion = Study.FormatVersion, OpenRun = run }));
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            throw DiskFault.Describe(exception, paths.Relative(paths.OpenRun(key)), "The run was not begun.");
        }
    }

    public static void Remove(StudyPaths paths, SessionKey key)
    {
        DurableFile.Remove(paths.OpenRun(key));
        try
        {
            Directory.Delete(paths.OpenRuns);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            // Other runs are open, or there is nothing to remove.
        }
    }
}
