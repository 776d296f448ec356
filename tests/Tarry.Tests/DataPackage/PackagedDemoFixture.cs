namespace Tarry.Tests.DataPackage;

/// <summary>The demonstration and its data package, made once for all tests that look at them.</summary>
public sealed class PackagedDemoFixture : IAsyncLifetime
{
    private readonly DemoStudyFixture demo = new();

    public string Study => demo.Study;

    public string Package => Path.Combine(demo.Study, "package");

    public string Terminal => demo.Terminal;

    public async ValueTask InitializeAsync()
    {
        await demo.InitializeAsync();
        await ProgramRun.Done("export", Study, "--format", "datapackage", "--licence", "CC-BY-4.0");
    }

    public ValueTask DisposeAsync() => demo.DisposeAsync();
}
