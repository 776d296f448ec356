using Spectre.Console;
using Spectre.Console.Rendering;

namespace Tarry.Output;

/// <summary>A table that is as wide as its terminal allows.</summary>
internal static class FittedTable
{
    /// <summary>A table without rows yet.</summary>
    public static Table New(params IEnumerable<string> heads)
    {
        var table = new Table { Border = TableBorder.Simple, UseSafeBorder = true };
        foreach (var head in heads)
        {
            table.AddColumn(new TableColumn(head).NoWrap());
        }

        return table;
    }

    /// <summary>Cells of a row. Spaces that do not break are for pages; a terminal does not break here anyway.</summary>
    public static IEnumerable<Text> Cells(params IEnumerable<string> cells) => cells.Select(cell => new Text(cell.Replace('\u00A0', ' ')));

    /// <summary>Writes the first table that fits, else the last.</summary>
    /// <param name="terminal">Where to.</param>
    /// <param name="widestFirst">The same table with ever less in it.</param>
    public static void Write(Terminal terminal, params IReadOnlyList<Table> widestFirst)
    {
        var console = terminal.Tables();
        var table = widestFirst.FirstOrDefault(one => WidthOf(one, console) <= console.Profile.Width, widestFirst[^1]);

        // A terminal that is narrower still breaks the line, which is better than a number broken in two.
        console.Profile.Width = Math.Max(console.Profile.Width, WidthOf(table, console));
        console.Write(table);
    }

    private static int WidthOf(IRenderable table, IAnsiConsole console) =>
        table.Measure(RenderOptions.Create(console), int.MaxValue).Max;
}
