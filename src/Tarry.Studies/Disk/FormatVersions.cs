namespace Tarry.Studies.Disk;

/// <summary>Which versions of the study format are read.</summary>
internal static class FormatVersions
{
    /// <summary>Refuses a version that is newer than this program, or no version.</summary>
    public static void Require(long version, string place)
    {
        if (version > Study.FormatVersion)
        {
            throw new StudyException(
                $"{place} is of format version {version}; this program reads up to {Study.FormatVersion}.",
                place,
                "Open the study with a newer version of the program.");
        }

        if (version < 1)
        {
            throw new StudyException($"{place} has the format version {version}, which is not one.", place, $"Write 1 to {Study.FormatVersion}.");
        }
    }
}
