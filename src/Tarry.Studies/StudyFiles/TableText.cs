using Tomlyn.Syntax;

namespace Tarry.Studies.StudyFiles;

/// <summary>One table of the study file with the places of its entries: a <c>[[name]]</c> block or an inline table.</summary>
internal sealed class TableText
{
    private TableText(SyntaxNode node, IEnumerable<KeyValueSyntax> entries)
    {
        Node = node;
        Entries = [.. entries.Where(entry => entry.Key!.DotKeys.ChildrenCount == 0)];
    }

    /// <summary>The whole table.</summary>
    public SyntaxNode Node { get; }

    /// <summary>Its entries with plain keys; dotted keys are nobody's factor.</summary>
    public IReadOnlyList<KeyValueSyntax> Entries { get; }

    public static TableText Of(TableSyntaxBase table) => new(table, table.Items);

    public static TableText Of(InlineTableSyntax table) => new(table, table.Items.Select(item => item.KeyValue!));

    public static TableText Of(DocumentSyntax document) => new(document, document.KeyValues);

    public static string KeyOf(KeySyntax key) => key.Key switch
    {
        BareKeySyntax bare => bare.Key!.Text!,
        StringValueSyntax quoted => quoted.Value!,
        _ => "",
    };

    public KeyValueSyntax? Find(string key) => Entries.FirstOrDefault(entry => KeyOf(entry.Key!) == key);
}
