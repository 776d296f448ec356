using Microsoft.AspNetCore.Components;
using Tarry.Findings;
using Tarry.Web.Comparing;
using Tarry.Web.Desk;

namespace Tarry.Web.Pages;

/// <summary>Any two conditions side by side, a factor over all, and every pair at a glance.</summary>
public sealed partial class ComparePage : StudyPage
{
    private CompareView? view;
    private FindingsDocument? viewed;
    private (string?, string?, string?) asked;
    private (string? A, string? B) chosen;

    /// <summary>The first condition of a pair.</summary>
    [SupplyParameterFromQuery]
    public string? A { get; set; }

    /// <summary>The second.</summary>
    [SupplyParameterFromQuery]
    public string? B { get; set; }

    /// <summary>A factor by its key.</summary>
    [SupplyParameterFromQuery]
    public string? Factor { get; set; }

    /// <summary>Where the window is.</summary>
    [Inject]
    public required NavigationManager Navigation { get; set; }

    private bool IsAsked => A is { Length: > 0 } && B is { Length: > 0 } || Factor is { Length: > 0 };

    private string Missing => Factor is { Length: > 0 } ? $"No two conditions of this study differ in '{Factor}' alone."
        : A == B ? "These are one and the same; choose another to compare it with."
        : $"The study has no trials of {string.Join(" or of ", new[] { A, B }.Where(id => !view!.Ids.Contains(id!)))}.";

    /// <inheritdoc/>
    protected override void OnFound(FindingsDocument document)
    {
        chosen = (A, B);
        // The same view for the same question: its figures are drawn once.
        if (view is null || document != viewed || asked != (A, B, Factor))
        {
            view = CompareView.Make(document, A, B, Factor);
            (viewed, asked) = (document, (A, B, Factor));
        }
    }

    private string Pair(string a, string b) => To($"compare?a={Uri.EscapeDataString(a)}&b={Uri.EscapeDataString(b)}");

    // What was chosen a moment ago may not be in the parameters yet.
    private void ChooseA(string? a) => Navigation.NavigateTo(Pair((chosen = (a, chosen.B)).A ?? "", chosen.B ?? ""));

    private void ChooseB(string? b) => Navigation.NavigateTo(Pair(chosen.A ?? "", (chosen = (chosen.A, b)).B ?? ""));
}
