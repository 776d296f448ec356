using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;
using Tarry.Findings;
using Tarry.Reports.Merits;
using Tarry.Web.Desk;
using Tarry.Web.Standing;

namespace Tarry.Web.Pages;

/// <summary>The standing: all conditions side by side, sorted and filtered as the address says.</summary>
public sealed partial class StandingPage : StudyPage
{
    private StandingTable? table;

    /// <summary>Where the window is.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <inheritdoc/>
    protected override void OnInitialized() => Navigation.LocationChanged += OnLocationChanged;

    /// <inheritdoc/>
    protected override void OnFound(FindingsDocument document) => table = StandingTable.Make(document, StandingQuery.Parse(new Uri(Navigation.Uri), document));

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        Navigation.LocationChanged -= OnLocationChanged;
        base.Dispose(disposing);
    }

    private static string Words(string factor) => factor.Replace('_', ' ');

    /// <summary>Where the evidence of a figure is.</summary>
    private string Evidence(FigureOfMerit column, string id) => column.Key switch
    {
        "relative" when Document?.Reference is { } reference => $"compare?a={id}&b={reference}",
        "late" or "missed" or "p99" => $"condition/{id}#late",
        "interval" => $"condition/{id}#device",
        _ => $"condition/{id}#latencies",
    };

    private string Sorted(FigureOfMerit column) => column != table!.Query.Sort ? "none" : table.Query.GreatestFirst ? "descending" : "ascending";

    private string Arrow(FigureOfMerit column) => column != table!.Query.Sort ? "" : table.Query.GreatestFirst ? "\u00A0\u25BE" : "\u00A0\u25B4";

    private string Shade(StandingRow row)
    {
        var byMean = table!.Query.Sort == FiguresOfMerit.Mean;
        return $"{(byMean && row.Group % 2 == 1 ? "shaded" : "")} {(byMean && row.IsTied ? "tied" : "")} {(!byMean && row.OverlapsAbove ? "open" : "")}".Trim();
    }

    private void Choose(string factor, ChangeEventArgs change) => Go(table!.Query.With(factor, change.Value?.ToString() ?? ""));

    private void Go(StandingQuery query) => Navigation.NavigateTo(To(query.Address));

    // Filters are named by the study's own factors, so they are no parameters that the framework could watch.
    private void OnLocationChanged(object? sender, LocationChangedEventArgs change) => _ = InvokeAsync(() =>
    {
        if (Document is { } document)
        {
            OnFound(document);
            StateHasChanged();
        }
    });
}
