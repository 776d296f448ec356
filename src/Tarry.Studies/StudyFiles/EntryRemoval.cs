using Tomlyn.Syntax;

namespace Tarry.Studies.StudyFiles;

/// <summary>Removes an entry from the text of a study file, and leaves all comments where they are.</summary>
internal static class EntryRemoval
{
    /// <summary>The text without the entry: without its line, or without its part of an inline table.</summary>
    public static string Of(string text, KeyValueSyntax entry) => entry.Parent is InlineTableItemSyntax item
        ? Item(text, item)
        : TableRemoval.Piece(text, entry.Key!.Span.Start.Offset, EndOf(entry), isHead: false);

    // An item goes with the comma that joins it to its neighbour.
    private static string Item(string text, InlineTableItemSyntax item)
    {
        var siblings = ((SyntaxList<InlineTableItemSyntax>)item.Parent!).ToList();
        var index = siblings.IndexOf(item);
        var (start, end) = index > 0
            ? (EndOf(siblings[index - 1].KeyValue!), EndOf(item.KeyValue!))
            : (item.KeyValue!.Span.Start.Offset, siblings.Count > 1 ? siblings[1].KeyValue!.Span.Start.Offset : EndOf(item.KeyValue));
        return text.Remove(start, end - start);
    }

    private static int EndOf(KeyValueSyntax entry) => entry.Value!.Span.Start.Offset + entry.Value.Span.Length;
}
