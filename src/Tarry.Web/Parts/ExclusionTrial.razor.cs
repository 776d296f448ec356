using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Exclusions;
using Tarry.Reports.Wording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Web.Desk;

namespace Tarry.Web.Parts;

/// <summary>Setting a session aside on trial: what it changes is shown before anything is written.</summary>
public sealed partial class ExclusionTrial : IDisposable
{
    private string reason = "";
    private bool isWorking;
    private CancellationTokenSource? stopping;
    private Foreseen? foreseen;
    private ExclusionEffect? effect;
    private Exception? problem;

    /// <summary>The study's desk.</summary>
    [Parameter]
    [EditorRequired]
    public required StudyDesk Desk { get; set; }

    /// <summary>The findings as they are.</summary>
    [Parameter]
    [EditorRequired]
    public required FindingsDocument Document { get; set; }

    /// <summary>The session.</summary>
    [Parameter]
    [EditorRequired]
    public required SessionKey Session { get; set; }

    /// <summary>Called once it is set aside for good.</summary>
    [Parameter]
    public EventCallback<Exclusion> Kept { get; set; }

    /// <summary>Where leaving it in leads.</summary>
    [Parameter]
    [EditorRequired]
    public required string Back { get; set; }

    /// <inheritdoc/>
    public void Dispose() => stopping?.Cancel();

    private static string Rank(RankedCondition? rank) => rank is null ? "none"
        : rank.BestRank == rank.WorstRank ? Numbers.Whole(rank.BestRank)
        : $"{Numbers.Whole(rank.BestRank)} to {Numbers.Whole(rank.WorstRank)}";

    private async Task Try()
    {
        (isWorking, effect, foreseen, problem) = (true, null, null, null);
        using var source = stopping = new CancellationTokenSource();
        try
        {
            foreseen = await Desk.Try(Asked, source.Token);
            effect = ExclusionEffect.Of(Document, foreseen.Findings, Session.Condition);
        }
        catch (OperationCanceledException)
        {
            // Stopped by the user, or the page is gone: nothing was written.
        }
        catch (Exception fault) when (fault is StudyException or IOException or UnauthorizedAccessException)
        {
            problem = fault;
        }

        (isWorking, stopping) = (false, null);
    }

    private void Stop() => stopping?.Cancel();

    private async Task Keep()
    {
        try
        {
            var exclusion = Asked;
            Desk.Edit((study, held) => study.AddExclusion(held, exclusion), foreseen);
            await Kept.InvokeAsync(exclusion);
        }
        catch (StudyException fault)
        {
            problem = fault;
        }
    }

    private Exclusion Asked => new(Session, reason.Trim(), null, null);
}
