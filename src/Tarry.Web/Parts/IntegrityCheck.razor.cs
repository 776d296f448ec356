using Microsoft.AspNetCore.Components;
using Tarry.Studies;
using Tarry.Web.Desk;

namespace Tarry.Web.Parts;

/// <summary>The check of a study's files, on demand, with progress; it can be stopped.</summary>
public sealed partial class IntegrityCheck : IDisposable
{
    private CheckProgress progress;
    private StudyCheckResult? result;
    private CancellationTokenSource? stopping;
    private Exception? problem;
    private bool isRunning;
    private bool wasStopped;

    /// <summary>The study's desk.</summary>
    [Parameter]
    [EditorRequired]
    public required StudyDesk Desk { get; set; }

    /// <inheritdoc/>
    public void Dispose() => stopping?.Cancel();

    private async Task Run()
    {
        (isRunning, wasStopped, result, problem, progress) = (true, false, null, null, default);
        using var source = stopping = new CancellationTokenSource();
        var watcher = new Progress<CheckProgress>(now =>
        {
            progress = now;
            StateHasChanged();
        });
        try
        {
            result = await Task.Run(() => StudyCheck.RunWatched(Desk.Open(), watcher, source.Token), source.Token);
        }
        catch (OperationCanceledException)
        {
            wasStopped = true;
        }
        catch (Exception fault) when (fault is StudyException or IOException or UnauthorizedAccessException)
        {
            problem = fault;
        }

        (isRunning, stopping) = (false, null);
    }
}
