using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Tarry.Web.Comparing;

namespace Tarry.Web.Parts;

/// <summary>The matrix of verdicts: one stop of the tabulator, the arrow keys go from cell to cell.</summary>
public sealed partial class VerdictGrid
{
    private readonly Dictionary<(int Row, int Column), ElementReference> links = [];
    private (int Row, int Column) at;

    /// <summary>The pairs.</summary>
    [Parameter]
    [EditorRequired]
    public required VerdictMatrix Matrix { get; set; }

    /// <summary>The address of a pair.</summary>
    [Parameter]
    [EditorRequired]
    public required Func<string, string, string> Address { get; set; }

    /// <summary>The first condition of the pair that is shown; null for none.</summary>
    [Parameter]
    public string? A { get; set; }

    /// <summary>The second.</summary>
    [Parameter]
    public string? B { get; set; }

    private async Task Move(KeyboardEventArgs key)
    {
        var (row, column) = at;
        (int Row, int Column) next = key.Key switch
        {
            "ArrowUp" => (row - 1, column),
            "ArrowDown" => (row + 1, column),
            "ArrowLeft" => (row, column - 1),
            "ArrowRight" => (row, column + 1),
            "Home" => (row, 0),
            "End" => (row, row),
            _ => at,
        };
        if (next != at && next.Row >= 0 && next.Row < Matrix.Rows.Count && next.Column >= 0 && next.Column < Matrix.Rows[next.Row].Cells.Count)
        {
            at = next;
            await links[at].FocusAsync();
        }
    }
}
