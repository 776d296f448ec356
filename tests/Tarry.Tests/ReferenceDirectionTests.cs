using System.Xml.Linq;

namespace Tarry.Tests;

/// <summary>Holds the arrows between projects: an arrow drawn backwards fails here.</summary>
public class ReferenceDirectionTests
{
    // Direct references; what they in turn refer to comes with them.
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Tarry.Metrology"] = [],
        ["Tarry.Statistics"] = ["Tarry.Metrology"],
        ["Tarry.Studies"] = ["Tarry.Metrology"],
        ["Tarry.Rig"] = ["Tarry.Studies", "Tarry.Statistics"],
        ["Tarry.Imports"] = ["Tarry.Studies", "Tarry.Statistics"],
        ["Tarry.Findings"] = ["Tarry.Statistics", "Tarry.Studies"],
        ["Tarry.Reports"] = ["Tarry.Findings"],
        ["Tarry.Web"] = ["Tarry.Reports", "Tarry.Rig", "Tarry.Imports"],
        ["Tarry"] = ["Tarry.Reports", "Tarry.Rig", "Tarry.Imports", "Tarry.Web"],
    };

    public static TheoryData<string> Projects =>
        [.. Directory.GetDirectories(Path.Combine(Repository.Root, "src")).Select(folder => Path.GetFileName(folder))];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Project_RefersOnlyWhereItMay(string project)
    {
        var file = XDocument.Load(Path.Combine(Repository.Root, "src", project, project + ".csproj"));
        var references = file.Descendants("ProjectReference")
            .Select(reference => Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value.Replace('\\', '/')));
        Assert.True(Allowed.ContainsKey(project), $"{project} has no place among the arrows; add it to this test and to CONTRIBUTING.md.");
        Assert.Subset(Allowed[project].ToHashSet(), references.ToHashSet());
    }
}
