using Tomlyn.Syntax;

namespace Tarry.Studies.StudyFiles;

/// <summary>Removes a table from the text of a study file, and leaves all comments where they are.</summary>
internal static class TableRemoval
{
    /// <summary>The text without the table: a <c>[[name]]</c> block or an inline table of a list.</summary>
    public static string Of(string text, SyntaxNode table) => table switch
    {
        TableSyntaxBase block => Block(text, block),
        InlineTableSyntax { Parent: ArrayItemSyntax item } => Item(text, item),
        _ => throw new ArgumentException("Only a table of a list can be removed.", nameof(table)),
    };

    private static string Block(string text, TableSyntaxBase block)
    {
        (int Start, int End)[] pieces =
        [
            (block.OpenBracket!.Span.Start.Offset, EndOf(block.CloseBracket!)),
            .. block.Items.Select(item => (item.Key!.Span.Start.Offset, EndOf(item.Value!))),
        ];

        // From the end, so that the places of what comes before stay.
        foreach (var (start, end) in pieces.Reverse())
        {
            text = Piece(text, start, end, isHead: start == pieces[0].Start);
        }

        return text;
    }

    // Where a piece has its lines for itself they go with it; a comment behind it keeps a line of its own.
    internal static string Piece(string text, int start, int end, bool isHead)
    {
        var lineStart = start == 0 ? 0 : text.LastIndexOf('\n', start - 1) + 1;
        var lineFeed = text.IndexOf('\n', end);
        var lineEnd = lineFeed < 0 ? text.Length : lineFeed + 1;
        var rest = text[end..lineEnd];
        if (rest.TrimStart(' ', '\t').StartsWith('#'))
        {
            return string.Concat(text.AsSpan(0, start), rest.TrimStart(' ', '\t'), text.AsSpan(lineEnd));
        }

        var from = isHead ? BlankLineAbove(text, lineStart) : lineStart;
        return text.Remove(from, lineEnd - from);
    }

    // The blank line that parts a block from what comes before it.
    private static int BlankLineAbove(string text, int lineStart)
    {
        if (lineStart == 0)
        {
            return lineStart;
        }

        var above = lineStart == 1 ? 0 : text.LastIndexOf('\n', lineStart - 2) + 1;
        return string.IsNullOrWhiteSpace(text[above..lineStart]) ? above : lineStart;
    }

    private static string Item(string text, ArrayItemSyntax item)
    {
        var (start, end) = (item.Value!.Span.Start.Offset, EndOf(item.Value!));
        if (item.Comma is { } comma)
        {
            var next = EndOf(comma);
            return text.Remove(start, next + Blanks(text, next) - start);
        }

        text = text.Remove(start, end - start);
        var before = (item.Parent as SyntaxList<ArrayItemSyntax>)?.TakeWhile(other => other != item).LastOrDefault()?.Comma;
        return before is null ? text : text.Remove(before.Span.Start.Offset, before.Span.Length + Blanks(text, EndOf(before)));
    }

    private static int Blanks(string text, int from) => text.AsSpan(from).IndexOfAnyExcept(' ', '\t') is >= 0 and var count ? count : text.Length - from;

    private static int EndOf(SyntaxNode node) => node.Span.Start.Offset + node.Span.Length;
}
