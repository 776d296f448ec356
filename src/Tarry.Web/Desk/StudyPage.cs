using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Studies;

namespace Tarry.Web.Desk;

/// <summary>What every page of a study does: finds the study that the address names, gets its findings, and gets them again when the study has changed.</summary>
/// <remarks>The markup puts its content in <c>StudyFrame</c>, which shows what is there: the findings, that they are being computed, or why there are none.</remarks>
public abstract class StudyPage : ComponentBase, IDisposable
{
    private static readonly TimeSpan PrerenderWait = TimeSpan.FromMilliseconds(200);
    private StudyDesk? listened;

    /// <summary>The study's segment of the address.</summary>
    [Parameter]
    public required string Study { get; set; }

    /// <summary>The desks.</summary>
    [Inject]
    public required StudyDesks Desks { get; set; }

    /// <summary>The study's desk; null where the shelf has no such study.</summary>
    public StudyDesk? Desk { get; private set; }

    /// <summary>The findings; null while they are being computed.</summary>
    public FindingsDocument? Document { get; private set; }

    /// <summary>Why there are none; null where there are, or may be.</summary>
    public Exception? Problem { get; private set; }

    /// <summary>Whether the page is drawn from the findings; one that is not does not wait for them.</summary>
    protected virtual bool NeedsFindings => true;

    /// <summary>Whether the study has changed and what is shown is of before; the new findings are on their way.</summary>
    public bool IsOutdated { get; private set; }

    /// <summary>The address of another page of this study.</summary>
    public string To(string page) => StudyAddress.Of(StudyAddress.Name(Study), page);

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Stops listening to the study.</summary>
    protected virtual void Dispose(bool disposing) => Listen(null);

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        Desk = Desks.Of(StudyAddress.Name(Study));
        Listen(Desk);
        await Load();
    }

    /// <summary>Called when the findings are there or new, before the page is drawn.</summary>
    /// <param name="document">The findings.</param>
    protected virtual void OnFound(FindingsDocument document)
    {
    }

    /// <summary>The same, for what takes its time: the page is drawn in between.</summary>
    /// <param name="document">The findings.</param>
    protected virtual Task OnFoundAsync(FindingsDocument document) => Task.CompletedTask;

    private async Task Load()
    {
        if (Desk is null || !NeedsFindings)
        {
            return;
        }

        try
        {
            var findings = Desk.Findings();
            if (!RendererInfo.IsInteractive && await Task.WhenAny(findings, Task.Delay(PrerenderWait)) != findings)
            {
                // The first paint says that it is being worked out; the window that then connects waits for it.
                return;
            }

            var document = await findings;
            (Document, Problem) = (document, null);
            OnFound(document);
            await OnFoundAsync(document);
        }
        catch (Exception problem) when (problem is StudyException or IOException or UnauthorizedAccessException)
        {
            (Document, Problem) = (null, problem);
        }
    }

    private void Listen(StudyDesk? desk)
    {
        if (listened is not null)
        {
            listened.Changed -= OnChanged;
        }

        listened = desk;
        if (listened is not null)
        {
            listened.Changed += OnChanged;
        }
    }

    /// <summary>Called when this program has changed the study, before the page is drawn again.</summary>
    protected virtual void OnStudyChanged()
    {
    }

    private void OnChanged() => _ = InvokeAsync(async () =>
    {
        OnStudyChanged();
        IsOutdated = true;
        StateHasChanged();
        await Load();
        IsOutdated = false;
        StateHasChanged();
    });
}
