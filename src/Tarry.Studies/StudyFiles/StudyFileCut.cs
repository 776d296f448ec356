using Tomlyn.Syntax;

namespace Tarry.Studies.StudyFiles;

/// <summary>Takes an entry or a table out of the text of a study file; what stands around it, comments on lines of their own too, is left.</summary>
internal static class StudyFileCut
{
    /// <summary>The text without an entry: without its line, or without its part of an inline table.</summary>
    public static string Entry(string text, KeyValueSyntax entry) => entry.Parent switch
    {
        InlineTableItemSyntax item => Item(text, item),
        _ => Lines(text, entry.Span.Start.Offset, EndOf(entry.Value!)),
    };

    /// <summary>The text without a table: without its lines and the empty one before it, or without its part of a list.</summary>
    public static string Table(string text, TableText table)
    {
        if (table.Node.Parent is ArrayItemSyntax item)
        {
            return Item(text, item);
        }

        var block = (TableSyntaxBase)table.Node;
        var start = LineStart(text, block.Span.Start.Offset);
        if (EmptyLineBefore(text, start) is { } empty)
        {
            start = empty;
        }

        var last = Parts(block).LastOrDefault() ?? block;
        return Lines(text, start, EndOf(last.Items.LastOrDefault()?.Value ?? (SyntaxNode)last.CloseBracket!));
    }

    // Tables such as [condition.lab] belong to the [[condition]] above them.
    private static IEnumerable<TableSyntaxBase> Parts(TableSyntaxBase block) => ((SyntaxList<TableSyntaxBase>)block.Parent!)
        .SkipWhile(other => other != block)
        .Skip(1)
        .TakeWhile(other => other.Name!.DotKeys.ChildrenCount > 0 && TableText.KeyOf(other.Name) == TableText.KeyOf(block.Name!));

    // Whole lines, from the one that the first offset is in to the one that the last is in, which may end in a comment.
    private static string Lines(string text, int first, int last)
    {
        var start = LineStart(text, first);
        var lineFeed = text.IndexOf('\n', last);
        return lineFeed < 0 ? text[..start] : text.Remove(start, lineFeed + 1 - start);
    }

    // An item of a list between brackets or braces goes with the comma that joins it to its neighbour.
    private static string Item(string text, SyntaxNode item)
    {
        var siblings = (SyntaxList)item.Parent!;
        var index = Enumerable.Range(0, siblings.ChildrenCount).First(at => siblings.GetChild(at) == item);
        var (start, end) = index > 0
            ? (EndOf(Content(siblings.GetChild(index - 1)!)), EndOf(Content(item)))
            : siblings.ChildrenCount > 1
                ? (Content(item).Span.Start.Offset, Content(siblings.GetChild(1)!).Span.Start.Offset)
                : (Content(item).Span.Start.Offset, EndOf(Content(item)));
        return text.Remove(start, end - start);
    }

    private static SyntaxNode Content(SyntaxNode item) => item switch
    {
        InlineTableItemSyntax { KeyValue: { } entry } => entry,
        ArrayItemSyntax { Value: { } value } => value,
        _ => item,
    };

    private static int LineStart(string text, int offset) => offset == 0 ? 0 : text.LastIndexOf('\n', offset - 1) + 1;

    private static int? EmptyLineBefore(string text, int lineStart)
    {
        if (lineStart == 0)
        {
            return null;
        }

        var before = LineStart(text, lineStart - 1);
        return text[before..lineStart].Trim().Length == 0 ? before : null;
    }

    private static int EndOf(SyntaxNode node) => node is KeyValueSyntax entry ? EndOf(entry.Value!) : node.Span.Start.Offset + node.Span.Length;
}
