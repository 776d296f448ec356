using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Routing;
using Microsoft.AspNetCore.WebUtilities;
using Tarry.Findings;
using Tarry.Findings.Plans;
using Tarry.Studies;
using Tarry.Web.Desk;
using Tarry.Web.Planning;

namespace Tarry.Web.Pages;

/// <summary>Plans sittings and trials, and draws the order of the runs. The address holds everything that is asked.</summary>
public sealed partial class PlanPage
{
    private const int MostShown = 24;
    private PlanForm form = new(new Dictionary<string, string>());
    private PlanSheet? sheet;
    private Exception? problem;
    private bool isKept;
    private (string Text, string? Before)? undo;

    /// <summary>Where what is asked is put.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    private string GoalLabel => form.Request.Kind switch
    {
        PlanGoalKind.HalfWidth => "Half-width, ms",
        PlanGoalKind.Equivalence => "Less than, ms",
        _ => "Difference, ms",
    };

    private string Sheet => StudyAddress.Of(Desk!.Name, "order-sheet") + Query;

    private string Table => StudyAddress.Of(Desk!.Name, "order") + Query;

    private string Query => new Uri(Navigation.Uri).Query;

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        form = Asked();
        Navigation.LocationChanged += OnAsked;
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        Navigation.LocationChanged -= OnAsked;
        base.Dispose(disposing);
    }

    /// <inheritdoc/>
    protected override void OnFound(FindingsDocument document)
    {
        try
        {
            sheet = PlanSheet.Of(document, Desk!.Open().File, form, Desk.Name);
            isKept = sheet is { Order.Count: > 0 } && KeptOrder.Is(Desk.Folder, sheet);
            problem = null;
        }
        catch (Exception refused) when (refused is StudyException or IOException or UnauthorizedAccessException)
        {
            problem = refused;
        }
    }

    // A page is not told of another query that it does not name as parameters.
    private void OnAsked(object? sender, LocationChangedEventArgs change) => _ = InvokeAsync(() =>
    {
        if (Desk is not null && Navigation.ToBaseRelativePath(change.Location).Split('?', '#')[0] == To("plan"))
        {
            form = Asked();
            if (Document is { } document)
            {
                OnFound(document);
            }

            StateHasChanged();
        }
    });

    private PlanForm Asked() => new(QueryHelpers.ParseQuery(Query).ToDictionary(value => value.Key, value => value.Value.ToString()));

    private static string? Plain(int? number) => number?.ToString(CultureInfo.InvariantCulture);

    private string? Wrong(string name) => form.Problems.GetValueOrDefault(name);

    private string Bench(OrderedSitting sitting) => $"bench?study={StudyAddress.Segment(Desk!.Name)}&sitting={sitting.Sitting}";

    private string With(params (string Name, string? Value)[] values) =>
        Navigation.GetUriWithQueryParameters(values.ToDictionary(value => value.Name, value => (object?)value.Value));

    private void Ask(string name, string? value) =>
        Navigation.NavigateTo(With((name, string.IsNullOrWhiteSpace(value) ? null : value.Trim())), replace: true);

    private void Keep() => Change(() =>
    {
        var before = KeptOrder.Keep(Desk!.Folder, sheet!);
        undo = (before is null ? "The study keeps this order now." : "The study keeps this order now, in place of the one before.", before);
    });

    private void Undo() => Change(() =>
    {
        KeptOrder.Restore(Desk!.Folder, undo!.Value.Before);
        undo = null;
    });

    private void Change(Action change)
    {
        try
        {
            Desk!.Edit((_, _) => change());
            isKept = KeptOrder.Is(Desk.Folder, sheet!);
            problem = null;
        }
        catch (Exception refused) when (refused is StudyException or IOException or UnauthorizedAccessException)
        {
            problem = refused;
        }
    }
}
