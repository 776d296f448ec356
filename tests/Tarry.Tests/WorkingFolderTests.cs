using System.Xml.Linq;

namespace Tarry.Tests;

public class WorkingFolderTests
{
    [Fact]
    public void Project_LeavesTheWorkingFolderAlone()
    {
        // The web SDK's default makes 'dotnet run' begin in the project's folder, where 'tarry new pads' would put the study.
        var project = XDocument.Load(Path.Combine(Repository.Root, "src", "Tarry", "Tarry.csproj"));
        Assert.Equal("false", project.Descendants("EnableDefaultRunWorkingDirectory").Single().Value);
    }
}
