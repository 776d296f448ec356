using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Tarry.Findings.Json;

namespace Tarry.Findings.Tests.Json;

public class FindingsJsonTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "findings.schema.json")));

    [Fact]
    public void Write_OfAFullStudy_FitsThePublishedSchema() =>
        AssertFits(new SyntheticStudy(1).Add(3, ("ref", 5, 1), ("pad", 7, 8), ("air", 9, 8)).Analyse());

    [Fact]
    public void Write_OfAnEmptyStudy_FitsThePublishedSchema() => AssertFits(new SyntheticStudy(1).Analyse());

    [Fact]
    public void Write_OfTooFewTrials_FitsThePublishedSchema() =>
        AssertFits(new SyntheticStudy(1).AddSession("a", "pad", [1, 2, 3]).AddSession("a", "other", [], missed: 4).Analyse());

    [Fact]
    public void Schema_RefusesADocumentWithoutCounts()
    {
        var node = JsonNode.Parse(FindingsJson.Write(new SyntheticStudy(1).Analyse()))!.AsObject();
        node.Remove("counts");
        Assert.False(Evaluate(node).IsValid);
    }

    [Fact]
    public void Write_Twice_GivesTheSameBytes()
    {
        static string Once() => FindingsJson.Write(new SyntheticStudy(1).Add(3, ("ref", 5, 1), ("pad", 7, 8)).Analyse());
        Assert.Equal(Once(), Once());
    }

    internal static void AssertFits(FindingsDocument document)
    {
        var result = Evaluate(JsonNode.Parse(FindingsJson.Write(document))!);
        Assert.True(result.IsValid, string.Join("\n", (result.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }

    private static EvaluationResults Evaluate(JsonNode node) =>
        Schema.Evaluate(JsonSerializer.SerializeToElement(node), new EvaluationOptions { OutputFormat = OutputFormat.List });
}
