using Tarry.Web.Publishing;

namespace Tarry.Web.Tests.Publishing;

public sealed class PublishedFolderTests : IDisposable
{
    private readonly string study = Directory.CreateTempSubdirectory("tarry-published-").FullName;

    public PublishedFolderTests()
    {
        Directory.CreateDirectory(Path.Combine(study, "report", "figures"));
        File.WriteAllText(Path.Combine(study, "report", "report.html"), "report");
        File.WriteAllText(Path.Combine(study, "report", "figures", "standing-light.svg"), "svg");
        File.WriteAllText(Path.Combine(study, "report", ".hidden"), "hidden");
        File.WriteAllText(Path.Combine(study, "study.toml"), "secret");
    }

    [Theory]
    [InlineData("report.html")]
    [InlineData("figures/standing-light.svg")]
    public void Find_AFileThatIsThere_GivesIt(string path) => Assert.NotNull(PublishedFolder.Find(study, path));

    [Theory]
    [InlineData("../study.toml")]
    [InlineData("figures/../../study.toml")]
    [InlineData("..\\study.toml")]
    [InlineData("/etc/passwd")]
    [InlineData("")]
    [InlineData("figures")]
    [InlineData("figures//standing-light.svg")]
    [InlineData(".hidden")]
    [InlineData("report.html\0.csv")]
    [InlineData("C:report.html")]
    public void Find_AnythingElse_GivesNothing(string path) => Assert.Null(PublishedFolder.Find(study, path));

    [Fact]
    public void Find_ThroughALink_GivesNothing()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Making a link takes a right of its own there.");
        File.CreateSymbolicLink(Path.Combine(study, "report", "link.html"), Path.Combine(study, "study.toml"));
        Directory.CreateSymbolicLink(Path.Combine(study, "report", "out"), study);
        Assert.Null(PublishedFolder.Find(study, "link.html"));
        Assert.Null(PublishedFolder.Find(study, "out/study.toml"));
        Assert.DoesNotContain(PublishedFolder.Files(study, 100), file => file.Name.Contains("link", StringComparison.Ordinal) || file.Name.Contains("out/", StringComparison.Ordinal));
    }

    [Fact]
    public void Files_OfTheFolder_AreListedWithTheirLengths() =>
        Assert.Equal([("report.html", 6L), ("figures/standing-light.svg", 3L)], PublishedFolder.Files(study, 100).Where(file => file.Name[0] != '.').Select(file => (file.Name, file.Bytes)));

    [Theory]
    [InlineData("../out")]
    [InlineData("/tmp")]
    [InlineData("a/b")]
    public void Of_ANameThatIsNone_IsRefused(string subfolder) => Assert.Throws<ArgumentException>(() => PublishedFolder.Of(study, subfolder));

    public void Dispose() => Directory.Delete(study, recursive: true);
}
