using Microsoft.AspNetCore.Components;
using Tarry.Findings.Quality;
using Tarry.Reports.Wording;

namespace Tarry.Web.Bench;

/// <summary>One run, live.</summary>
public sealed partial class RunPanel : IDisposable
{
    private BenchRun? listened;
    private bool asksToSeal;
    private Exception? refusal;

    /// <summary>The run.</summary>
    [Parameter]
    [EditorRequired]
    public required BenchRun Of { get; set; }

    /// <summary>The study's reference condition; null for none.</summary>
    [Parameter]
    public string? Reference { get; set; }

    /// <summary>The bench.</summary>
    [Inject]
    public required LiveBench Bench { get; set; }

    private RunView run => Of.Now;

    /// <inheritdoc/>
    public void Dispose() => Listen(null);

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (listened != Of)
        {
            (asksToSeal, refusal) = (false, null);
            Listen(Of);
        }
    }

    private Task GoOn() => Try(() => Bench.Begin(run.Card));

    private Task Seal() => Try(() => Bench.Seal(run.Card.Study, run.Card.Key));

    private async Task Try(Action action)
    {
        (refusal, asksToSeal) = (null, false);
        try
        {
            await Task.Run(action);
        }
        catch (Exception exception) when (Obstacle.Is(exception))
        {
            refusal = exception;
        }
    }

    private void Listen(BenchRun? next)
    {
        if (listened is not null)
        {
            listened.Changed -= OnChanged;
        }

        listened = next;
        if (listened is not null)
        {
            listened.Changed += OnChanged;
        }
    }

    private void OnChanged() => _ = InvokeAsync(StateHasChanged);
}
