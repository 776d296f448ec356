using System.Xml.Linq;

namespace Tarry.Reports.Documents;

/// <summary>A table with a caption that a screen reader can walk and that turns into one card a row on a narrow screen.</summary>
/// <remarks>Roles are stated because a style that changes the display of a table's parts takes its meaning from some readers.</remarks>
internal sealed class HtmlTable
{
    private readonly IReadOnlyList<string> heads;
    private readonly XElement body = new("tbody", new XAttribute("role", "rowgroup"));
    private readonly string caption;
    private readonly HashSet<int> textColumns = [];

    /// <summary>A table without rows yet.</summary>
    /// <param name="caption">What it shows.</param>
    /// <param name="heads">The heads of its columns; the first is the head of the rows.</param>
    public HtmlTable(string caption, params IReadOnlyList<string> heads) => (this.caption, this.heads) = (caption, heads);

    /// <summary>The table, ready to stand in the document.</summary>
    public XElement Element => new(
        "table",
        new XAttribute("role", "table"),
        new XElement("caption", caption),
        new XElement(
            "thead",
            new XAttribute("role", "rowgroup"),
            new XElement(
                "tr",
                new XAttribute("role", "row"),
                heads.Select((head, column) => new XElement("th", new XAttribute("role", "columnheader"), new XAttribute("scope", "col"), textColumns.Contains(column) ? new XAttribute("class", "text") : null, head)))),
        body);

    /// <summary>Adds a row.</summary>
    /// <param name="head">What the row is about.</param>
    /// <param name="cells">A cell for every further column.</param>
    /// <param name="cssClass">How the row is set, such as <c>total</c>, or <c>long</c> for numbers that need a wide column on a phone.</param>
    public void Add(TableCell head, IReadOnlyList<TableCell> cells, string cssClass = "")
    {
        var row = new XElement("tr", new XAttribute("role", "row"));
        if (cssClass.Length > 0)
        {
            row.Add(new XAttribute("class", cssClass));
        }

        row.Add(new XElement("th", new XAttribute("role", "rowheader"), new XAttribute("scope", "row"), head.Content()));
        row.Add(cells.Select((cell, index) => new XElement(
            "td",
            new XAttribute("role", "cell"),
            new XAttribute("data-head", heads[index + 1]),
            cell.IsText ? new XAttribute("class", "text") : null,
            cell.Content())));
        body.Add(row);
        textColumns.UnionWith(Enumerable.Range(1, cells.Count).Where(column => cells[column - 1].IsText));
    }
}
