using System.Text.Json;

namespace Tarry.Tests;

/// <summary>The demonstration, made once for all tests that look at it.</summary>
public sealed class DemoStudyFixture : IAsyncLifetime
{
    private readonly TemporaryFolder folder = new();

    public string Study => folder["demo"];

    public string Terminal { get; private set; } = "";

    public JsonElement Findings { get; private set; }

    public async ValueTask InitializeAsync()
    {
        Terminal = await ProgramRun.Done("demo", "--out", Study);
        Findings = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(Study, "report", "findings.json"))).RootElement;
    }

    public ValueTask DisposeAsync()
    {
        folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
