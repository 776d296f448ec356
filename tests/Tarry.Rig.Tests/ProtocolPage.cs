namespace Tarry.Rig.Tests;

/// <summary>The frames of <c>docs/protocol.md</c>: the page is the source, not this code.</summary>
internal static class ProtocolPage
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(RepositoryRoot(), "docs", "protocol.md"));

    public static IReadOnlyList<string> GoldenFromRig => Block("golden", 0);

    public static IReadOnlyList<string> GoldenFromHost => Block("golden", 1);

    public static IReadOnlyList<string> Bad => Block("bad", 0);

    private static List<string> Block(string name, int index)
    {
        var start = 0;
        for (var i = 0; i <= index; i++)
        {
            start = Array.IndexOf(Lines, "```" + name, start) + 1;
            Assert.True(start > 0, $"docs/protocol.md has no block {index} of {name}");
        }

        return [.. Lines.Skip(start).TakeWhile(line => line != "```")];
    }

    private static string RepositoryRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "docs", "protocol.md")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("docs/protocol.md is in no folder above the tests.");
        }

        return folder.FullName;
    }
}
