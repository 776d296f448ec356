using Microsoft.Extensions.DependencyInjection;
using Tarry.Web.Bench;
using Tarry.Web.Hosting;

namespace Tarry.Web.Tests.Bench;

public sealed class StoppedProgramTests : IDisposable
{
    private readonly BenchStudy bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task Stop_RunUnderWay_IsStoppedFirstAndLosesNothing()
    {
        await using var app = WebBench.Build(bench.Options);
        await app.StartAsync(TestContext.Current.CancellationToken);
        var run = app.Services.GetRequiredService<LiveBench>().Begin(BenchStudy.Card(null, speed: 20));
        var some = new TaskCompletionSource();
        run.Changed += () =>
        {
            if (run.Now.Captured >= 20)
            {
                some.TrySetResult();
            }
        };
        await some.Task.WaitAsync(TimeSpan.FromSeconds(20), TestContext.Current.CancellationToken);
        await app.StopAsync(TestContext.Current.CancellationToken);
        Assert.Equal(RunStanding.Paused, run.Now.Standing);
        Assert.Equal(run.Now.Captured, bench.Open().Read(BenchStudy.Key).Trials.Count);
        bench.Open().AcquireLock("tests").Dispose();
    }
}
