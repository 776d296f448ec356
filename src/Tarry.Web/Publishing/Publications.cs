using System.Collections.Concurrent;
using Tarry.Studies;
using Tarry.Web.Desk;

namespace Tarry.Web.Publishing;

/// <summary>The draft and the publication of every study: shared by all windows, and not lost with one.</summary>
public sealed class Publications
{
    private readonly ConcurrentDictionary<string, PublicationDraft> drafts = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, PublicationRun> runs = new(StringComparer.Ordinal);

    /// <summary>Raised, on any thread, with the study's name, when a publication has come further.</summary>
    public event Action<string>? Changed;

    /// <summary>The draft of a study.</summary>
    public PublicationDraft Draft(string study) => drafts.GetValueOrDefault(study) ?? new PublicationDraft();

    /// <summary>Keeps a draft until the program ends.</summary>
    public void Keep(string study, PublicationDraft draft) => drafts[study] = draft;

    /// <summary>The publication of a study that is under way, or its last; null where there was none.</summary>
    public PublicationRun? Run(string study) => runs.GetValueOrDefault(study);

    /// <summary>Begins to publish a study by its draft; one that is under way goes on.</summary>
    public void Begin(StudyDesk desk)
    {
        ArgumentNullException.ThrowIfNull(desk);
        var run = new PublicationRun();
        if (Run(desk.Name) is { IsRunning: true })
        {
            run.Dispose();
            return;
        }

        runs[desk.Name] = run;
        _ = Task.Run(() => Write(desk, run, Draft(desk.Name)));
    }

    private async Task Write(StudyDesk desk, PublicationRun run, PublicationDraft draft)
    {
        try
        {
            var document = await desk.Findings();
            Publication.Write(desk.Open(), document, draft, progress => Show(desk.Name, run, progress), run.Stopping);
        }
        catch (OperationCanceledException)
        {
            run.WasStopped = true;
        }
        catch (Exception problem) when (problem is StudyException or IOException or UnauthorizedAccessException)
        {
            run.Problem = problem;
        }
        finally
        {
            run.IsRunning = false;
            Changed?.Invoke(desk.Name);
        }
    }

    private void Show(string study, PublicationRun run, PublicationProgress progress)
    {
        if (progress.Done >= run.Progress.Done)
        {
            run.Progress = progress;
        }

        Changed?.Invoke(study);
    }
}
