using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Tarry.Studies.StudyFiles;

/// <summary>The text of a study file, taken apart so that everything in it keeps its place.</summary>
internal sealed class StudyFileText
{
    public const string FileName = "study.toml";

    private StudyFileText(string text, DocumentSyntax document)
    {
        Text = text;
        Document = document;
        Root = TableText.Of(document);
        Conditions = Tables("condition");
        Exclusions = Tables("exclude");
    }

    public string Text { get; }

    public DocumentSyntax Document { get; }

    public TableText Root { get; }

    public IReadOnlyList<TableText> Conditions { get; }

    public IReadOnlyList<TableText> Exclusions { get; }

    /// <summary>The table of a name, <c>[name]</c> or inline; null where there is none.</summary>
    /// <exception cref="StudyException">It is something else.</exception>
    public TableText? Table(string name)
    {
        if (Root.Find(name) is { } entry)
        {
            return TableText.Of(entry.Value as InlineTableSyntax ?? throw NotATable(entry.Span, name));
        }

        var table = Document.Tables.FirstOrDefault(table => table.Name!.DotKeys.ChildrenCount == 0 && TableText.KeyOf(table.Name) == name);
        return table is null ? null : TableText.Of(table is TableSyntax ? table : throw NotATable(table.Span, name));
    }

    /// <summary>Takes the text apart.</summary>
    /// <exception cref="StudyException">It is not TOML.</exception>
    public static StudyFileText Parse(string text)
    {
        var document = SyntaxParser.Parse(text, FileName, validate: true);
        var error = document.Diagnostics.FirstOrDefault(message => message.Kind == DiagnosticMessageKind.Error);
        return error is null ? new StudyFileText(text, document) : throw Error(error.Span, error.Message);
    }

    /// <summary>An error at a place in the file.</summary>
    public static StudyException Error(SourceSpan span, string message, string? remedy = null)
    {
        var place = $"{FileName} line {span.Start.Line + 1} column {span.Start.Column + 1}";
        return new StudyException($"{place}: {message}", place, remedy ?? $"Correct {FileName} there with a text editor.");
    }

    private List<TableText> Tables(string name)
    {
        var tables = new List<TableText>();
        if (Root.Find(name) is { } entry)
        {
            foreach (var item in (entry.Value as ArraySyntax)?.Items ?? throw NotTables(entry.Span, name))
            {
                tables.Add(TableText.Of(item.Value as InlineTableSyntax ?? throw NotTables(item.Span, name)));
            }
        }

        foreach (var table in Document.Tables.Where(table => table.Name!.DotKeys.ChildrenCount == 0 && TableText.KeyOf(table.Name) == name))
        {
            tables.Add(table is TableArraySyntax ? TableText.Of(table) : throw NotTables(table.Span, name));
        }

        return tables;
    }

    private static StudyException NotATable(SourceSpan span, string name) =>
        Error(span, $"'{name}' must be one table; write it as [{name}].");

    private static StudyException NotTables(SourceSpan span, string name) =>
        Error(span, $"'{name}' must be a list of tables; write each as [[{name}]].");
}
