using Microsoft.AspNetCore.Components;
using Tarry.Web.Bench;

namespace Tarry.Web.Sticks;

/// <summary>One recording of a stick, live.</summary>
public sealed partial class StickRunPanel : IDisposable
{
    private StickRun? listened;
    private ElementReference title;
    private bool asksToDiscard;

    /// <summary>The recording.</summary>
    [Parameter]
    [EditorRequired]
    public required StickRun Of { get; set; }

    /// <summary>Whether this window has begun it: the form that had the focus is gone then.</summary>
    [Parameter]
    public bool TakesFocus { get; set; }

    /// <summary>The bench.</summary>
    [Inject]
    public required LiveBench Bench { get; set; }

    private StickRunView run => Of.Now;

    /// <inheritdoc/>
    public void Dispose() => Listen(null);

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (listened != Of)
        {
            asksToDiscard = false;
            Listen(Of);
        }
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender && TakesFocus)
        {
            await title.FocusAsync();
        }
    }

    private void Discard()
    {
        asksToDiscard = false;
        Of.Discard();
    }

    private void Listen(StickRun? next)
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
