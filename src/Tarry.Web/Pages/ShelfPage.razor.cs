using System.Globalization;
using Microsoft.AspNetCore.Components;
using Tarry.Web.Shelf;

namespace Tarry.Web.Pages;

/// <summary>The shelf: all studies of a folder, and the search among them. The address holds the search.</summary>
public sealed partial class ShelfPage : IDisposable
{
    private IReadOnlyList<StudySummary>? studies;
    private IReadOnlyList<StudySummary> found = [];
    private ShelfQuery query = new(null, null, null, null, null, null);
    private string? text;
    private Exception? problem;

    /// <summary>The folder.</summary>
    [Inject]
    public required StudyShelf Shelf { get; set; }

    /// <summary>What is on the shelf.</summary>
    [Inject]
    public required StudySummaries Summaries { get; set; }

    /// <summary>Where the search is put.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    /// <summary>Words looked for.</summary>
    [SupplyParameterFromQuery(Name = "q")]
    public string? Text { get; set; }

    /// <summary>The first day of the data, as <c>2026-11-03</c>.</summary>
    [SupplyParameterFromQuery]
    public string? From { get; set; }

    /// <summary>The last day of the data.</summary>
    [SupplyParameterFromQuery]
    public string? To { get; set; }

    /// <summary>A device.</summary>
    [SupplyParameterFromQuery]
    public string? Device { get; set; }

    /// <summary>A link.</summary>
    [SupplyParameterFromQuery]
    public string? Link { get; set; }

    /// <summary>A software layer.</summary>
    [SupplyParameterFromQuery]
    public string? Layer { get; set; }

    /// <summary>The demonstration.</summary>
    [Inject]
    public required Demonstration Demonstration { get; set; }

    /// <inheritdoc/>
    public void Dispose() => Demonstration.Changed -= OnDemonstration;

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        Demonstration.Changed += OnDemonstration;
        await Read();
    }

    private async Task Read()
    {
        try
        {
            studies = await Summaries.Read();
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            problem = refused;
        }

        Find();
    }

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        var asked = new ShelfQuery(Blank(Text), Day(From), Day(To), Blank(Device), Blank(Link), Blank(Layer));
        if (asked.Text != Blank(text))
        {
            text = asked.Text;
        }

        query = asked;
        Find();
    }

    // The study is half there while it is captured, so that it is looked for at the end alone.
    private void OnDemonstration() => _ = InvokeAsync(async () =>
    {
        if (!Demonstration.IsRunning)
        {
            await Read();
        }

        StateHasChanged();
    });

    private static string? Blank(string? value) => string.IsNullOrWhiteSpace(value) ? null : value;

    private static DateOnly? Day(string? value) =>
        DateOnly.TryParseExact(value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    private static string? Written(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private void Find() => found = studies is null ? [] : [.. studies.Where(query.Finds)];

    private IEnumerable<(string Value, string Text)> LevelsOf(string factor) =>
    [
        ("", "any"),
        .. (studies ?? []).SelectMany(study => study.Levels[factor]).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase)
            .Select(level => (level, ShelfWording.Short(level))),
    ];

    private void Typed(ChangeEventArgs change)
    {
        text = change.Value as string;
        Look(asked => asked with { Text = Blank(text) });
    }

    private void Search() => Look(asked => asked with { Text = Blank(text) });

    private void Look(Func<ShelfQuery, ShelfQuery> change)
    {
        var asked = change(query);
        Navigation.NavigateTo(
            Navigation.GetUriWithQueryParameters(new Dictionary<string, object?>
            {
                ["q"] = asked.Text,
                ["from"] = Written(asked.From),
                ["to"] = Written(asked.To),
                ["device"] = asked.Device,
                ["link"] = asked.Link,
                ["layer"] = asked.Layer,
            }),
            replace: true);
    }
}
