using System.Xml.Linq;
using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Reports.Documents;
using Tarry.Studies;
using Tarry.Web.Desk;
using Tarry.Web.Play;

namespace Tarry.Web.Pages;

/// <summary>What latencies mean for play, for windows and players that the address may state.</summary>
public sealed partial class PlayPage : StudyPage
{
    private PlayQuery? query;
    private FindingsDocument? shown;
    private FindingsDocument? found;
    private (string?, string?) asked;
    private XElement? section;
    private Exception? fault;
    private bool isWorking;
    private string windowsText = "";
    private string playersText = "";
    private CancellationTokenSource? stopping;

    /// <summary>Timing windows to either side, in milliseconds, with commas between.</summary>
    [SupplyParameterFromQuery]
    public string? Windows { get; set; }

    /// <summary>Standard deviations of the player's own timing, in milliseconds, with commas between.</summary>
    [SupplyParameterFromQuery]
    public string? Sd { get; set; }

    /// <summary>Where the window is.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <inheritdoc/>
    protected override void OnFound(FindingsDocument document)
    {
        if (document == found && asked == (Windows, Sd))
        {
            return;
        }

        (found, asked, fault) = (document, (Windows, Sd), null);
        query = PlayQuery.Parse(Windows, Sd);
        stopping?.Cancel();
        if (query.IsStated)
        {
            _ = Judge(document, query);
        }
        else
        {
            isWorking = false;
            Show(document);
        }
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        stopping?.Cancel();
        base.Dispose(disposing);
    }

    private async Task Judge(FindingsDocument document, PlayQuery stated)
    {
        isWorking = true;
        using var source = stopping = new CancellationTokenSource();
        try
        {
            var play = await Desk!.Play(document, stated.Entry, source.Token);
            if (!source.IsCancellationRequested)
            {
                isWorking = false;
                Show(document with { Play = play });
            }
        }
        catch (OperationCanceledException)
        {
            // Another question was asked, or the page is gone.
        }
        catch (Exception problem) when (problem is StudyException or IOException or UnauthorizedAccessException)
        {
            (isWorking, fault) = (false, problem);
        }

        if (stopping == source)
        {
            stopping = null;
            StateHasChanged();
        }
    }

    private void Show(FindingsDocument document)
    {
        shown = document;
        section = PlaySection.Build(document);
        section?.Element("h2")?.SetValue("In numbers");
        var settings = document.Play?.Settings;
        windowsText = query?.WindowsProblem is null && settings is not null ? PlayQuery.Text(settings.WindowsMs) : Windows ?? "";
        playersText = query?.PlayersProblem is null && settings is not null ? PlayQuery.Text(settings.PlayerSdsMs) : Sd ?? "";
    }

    private void Ask() => Navigation.NavigateTo(To($"play?windows={Uri.EscapeDataString(Tight(windowsText))}&sd={Uri.EscapeDataString(Tight(playersText))}"));

    private static string Tight(string text) => text.Replace(" ", "", StringComparison.Ordinal);
}
