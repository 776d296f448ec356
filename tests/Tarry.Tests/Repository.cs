namespace Tarry.Tests;

/// <summary>Where the repository lies, seen from a test.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Tarry.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests do not run inside the repository.");
    }
}
