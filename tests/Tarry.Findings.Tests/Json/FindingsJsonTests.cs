using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Tarry.Findings.Json;
using Tarry.Findings.ReportStreams;
using Tarry.Studies.Reports;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Tests.Json;

public class FindingsJsonTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "findings.schema.json")));

    [Fact]
    public void Write_OfAFullStudy_FitsThePublishedSchema() =>
        AssertFits(new SyntheticStudy(1) { WithShapes = true }.Add(3, ("ref", 5, 1), ("pad", 7, 8), ("air", 9, 8)).Analyse());

    [Fact]
    public void Write_OfAnEmptyStudy_FitsThePublishedSchema() => AssertFits(new SyntheticStudy(1).Analyse());

    [Fact]
    public void Write_OfTooFewTrials_FitsThePublishedSchema() =>
        AssertFits(new SyntheticStudy(1) { WithShapes = true }.AddSession("a", "pad", [1, 2, 3]).AddSession("a", "other", [], missed: 4).Analyse());

    [Fact]
    public void Write_OfReportStreams_FitsThePublishedSchema()
    {
        var reports = new ReportLog();
        for (var slot = 0; slot < 20; slot++)
        {
            reports.Add(8_000 * slot, 0x81, [(byte)slot]);
        }

        var key = new SessionKey("monday", "pad");
        var endpoint = new ReportEndpoint { Number = 0x81, Transport = "usb", BInterval = 8, Speed = "low-or-full", DeclaredIntervalUs = 8_000 };
        var session = new ReportSession(
            new SessionRecord { Key = key, Segments = [new Segment(null, 1, 1_000_000, null)], ReportStream = new ReportStream { Device = "usb1.5", Endpoints = [endpoint] } },
            reports);
        var finding = ReportStreamFindings.Of(key, session, endpoint);
        var silent = ReportStreamFindings.Of(key, session, endpoint with { Number = 0x82, Speed = null, DeclaredIntervalUs = null });
        Assert.Equal(1, finding.ObservedOverDeclared!.Value, 12);
        AssertFits(new SyntheticStudy(1).Analyse() with { ReportStreams = [finding, silent] });
    }

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
        static string Once() => FindingsJson.Write(new SyntheticStudy(1) { WithShapes = true }.Add(3, ("ref", 5, 1), ("pad", 7, 8)).Analyse());
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
