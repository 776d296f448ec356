using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Tarry.Findings.Contrasts;
using Tarry.Findings.Json;

namespace Tarry.Findings.Tests.Json;

public class ContrastJsonTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "comparison.schema.json")));

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void Write_WithinAndBetweenStudies_FitsThePublishedSchema(int sittings)
    {
        var first = new SyntheticStudy(1).Add(sittings, ("ref", 5, 1), ("pad", 7, 8), ("air", 9, 8)).Analyse();
        var second = new SyntheticStudy(2).Add(3, ("ref", 5, 1), ("pad", 7, 8)).Analyse();
        AssertFits(WithinStudyContrast.Of(first, "pad", "air"));
        AssertFits(LinkedContrast.Of(second, "pad", first, "air"));
    }

    [Fact]
    public void Schema_RefusesAComparisonWithoutVerdict()
    {
        var node = Node(WithinStudyContrast.Of(new SyntheticStudy(1).Add(3, ("ref", 5, 1), ("pad", 7, 8)).Analyse(), "pad", "ref"));
        node.Remove("verdict");
        Assert.False(Evaluate(node).IsValid);
    }

    private static void AssertFits(ContrastFinding contrast)
    {
        var result = Evaluate(Node(contrast));
        Assert.True(result.IsValid, string.Join("\n", (result.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }

    private static JsonObject Node(ContrastFinding contrast) => JsonNode.Parse(ContrastJson.Write(contrast))!.AsObject();

    private static EvaluationResults Evaluate(JsonObject node) =>
        Schema.Evaluate(JsonSerializer.SerializeToElement(node), new EvaluationOptions { OutputFormat = OutputFormat.List });
}
