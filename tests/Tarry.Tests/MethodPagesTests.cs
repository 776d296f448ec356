using System.Reflection;
using System.Text.RegularExpressions;
using Tarry.Findings;
using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Tests;

/// <summary>Every method that findings name is explained where the index of methods says.</summary>
public partial class MethodPagesTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "docs", "methods");
    private static readonly string[] Index = File.ReadAllLines(Path.Combine(Folder, "README.md"));

    public static TheoryData<string> Names =>
        [.. ((Type[])[typeof(MethodName), typeof(StickMethodName)]).SelectMany(names => names.GetFields(BindingFlags.Public | BindingFlags.Static)).Select(constant => (string)constant.GetRawConstantValue()!)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Method_OfTheFindings_StandsOnceInTheIndex(string name) =>
        Assert.Single(Index, line => line.StartsWith($"| `{name}` |", StringComparison.Ordinal) && Link().IsMatch(line));

    [Fact]
    public void Index_NamesOnlyMethodsThatThereAre() => Assert.Equal(
        Names.Select(row => row.Data).Order(StringComparer.Ordinal),
        Index.Select(line => Row().Match(line)).Where(match => match.Success).Select(match => match.Groups[1].Value).Order(StringComparer.Ordinal));

    [Fact]
    public void Links_OfTheIndex_LeadToPagesAndSections()
    {
        foreach (Match link in Link().Matches(string.Join('\n', Index)))
        {
            var page = Path.Combine(Folder, link.Groups[1].Value);
            Assert.True(File.Exists(page), link.Value);
            var section = link.Groups[2].Value;
            Assert.True(
                section.Length == 0 || File.ReadLines(page).Any(line => line.StartsWith('#') && line.TrimStart('#', ' ').ToLowerInvariant().Replace(' ', '-') == section),
                link.Value);
        }
    }

    [GeneratedRegex(@"^\| `([^`]+)` \|")]
    private static partial Regex Row();

    [GeneratedRegex(@"\]\(([^)#]+)#?([^)]*)\)")]
    private static partial Regex Link();
}
