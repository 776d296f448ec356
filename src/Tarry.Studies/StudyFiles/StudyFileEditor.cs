using System.Text;
using Tomlyn.Syntax;

namespace Tarry.Studies.StudyFiles;

/// <summary>
/// Changes to the text of a study file that touch nothing but what they change: one value is replaced in place, or lines are
/// added. Comments, order, spacing and line ends stay the user's.
/// </summary>
internal static class StudyFileEditor
{
    /// <summary>The text of a new study.</summary>
    public static string New(string title, string? reference, double marginMs)
    {
        var text = new StringBuilder()
            .Append("format = 1\n")
            .Append($"title = {TomlText.Quoted(title)}\n");
        if (reference is not null)
        {
            text.Append($"reference = {TomlText.Quoted(reference)}\n");
        }

        return text.Append($"margin_ms = {TomlText.Number(marginMs)}\n").ToString();
    }

    /// <summary>Names the reference condition.</summary>
    public static string SetReference(string text, string id) =>
        SetEntries(text, file => file.Root, [("reference", TomlText.Quoted(id))]);

    /// <summary>Sets the title.</summary>
    public static string SetTitle(string text, string title) => SetEntries(text, file => file.Root, [("title", TomlText.Quoted(title))]);

    /// <summary>Sets the margin.</summary>
    public static string SetMargin(string text, double marginMs) => SetEntries(text, file => file.Root, [("margin_ms", TomlText.Number(marginMs))]);

    /// <summary>Takes keys out of a condition.</summary>
    public static string ClearCondition(string text, string id, IEnumerable<string> keys) => keys.Aggregate(text, (before, key) =>
        Condition(StudyFileText.Parse(before), id)?.Find(key) is { } entry ? EntryRemoval.Of(before, entry) : before);

    /// <summary>Takes a condition out.</summary>
    /// <exception cref="StudyException">There is none of that id.</exception>
    public static string RemoveCondition(string text, string id) => Condition(StudyFileText.Parse(text), id) is { } table
        ? RemoveWithParts(text, table.Node)
        : throw new StudyException($"The study has no condition {id}.", StudyFileText.FileName, "It may have been removed already; load the page or the file again.");

    /// <summary>Declares a condition, or sets the given keys of one that is there and keeps its others.</summary>
    public static string SetCondition(string text, ConditionEntry condition)
    {
        var entries = condition.Factors.Select(factor => (factor.Key, TomlText.Quoted(factor.Value))).ToList();
        if (condition.NominalReportHz is { } rate)
        {
            entries.Add((StudyFileReader.NominalReportKey, TomlText.Number(rate)));
        }

        return Condition(StudyFileText.Parse(text), condition.Id) is null
            ? AddTable(text, "condition", [("id", TomlText.Quoted(condition.Id)), .. entries])
            : SetEntries(text, file => Condition(file, condition.Id)!, entries);
    }

    /// <summary>Adds an exclusion, unless the very same is there.</summary>
    public static string AddExclusion(string text, Exclusion exclusion)
    {
        if (StudyFileReader.Read(StudyFileText.Parse(text)).Exclusions.Contains(exclusion))
        {
            return text;
        }

        var entries = new List<(string Key, string Value)>
        {
            ("session", TomlText.Quoted(exclusion.Session.ToString())),
            ("reason", TomlText.Quoted(exclusion.Reason)),
        };
        if (exclusion.FirstSequence is { } first)
        {
            entries.Add(("first_seq", TomlText.Number(first)));
        }

        if (exclusion.LastSequence is { } last)
        {
            entries.Add(("last_seq", TomlText.Number(last)));
        }

        return AddTable(text, "exclude", entries);
    }

    /// <summary>Removes an exclusion, the first where the very same is there twice; its comments stay.</summary>
    public static string RemoveExclusion(string text, Exclusion exclusion)
    {
        var file = StudyFileText.Parse(text);
        var index = StudyFileReader.Read(file).Exclusions.ToList().IndexOf(exclusion);
        return index < 0 ? text : TableRemoval.Of(text, file.Exclusions[index].Node);
    }

    // Tables such as [condition.lab] belong to the [[condition]] above them, and go first: from the end, so that the places of what comes before stay.
    private static string RemoveWithParts(string text, SyntaxNode table)
    {
        var parts = table is TableSyntaxBase { Parent: SyntaxList<TableSyntaxBase> all } block
            ? all.SkipWhile(other => other != block).Skip(1).TakeWhile(other => other.Name!.DotKeys.ChildrenCount > 0 && TableText.KeyOf(other.Name) == TableText.KeyOf(block.Name!))
            : [];
        return TableRemoval.Of(parts.Reverse().Aggregate(text, TableRemoval.Of), table);
    }

    private static TableText? Condition(StudyFileText file, string id) =>
        file.Conditions.FirstOrDefault(table => (table.Find("id")?.Value as StringValueSyntax)?.Value == id);

    private static string SetEntries(string text, Func<StudyFileText, TableText> find, IReadOnlyList<(string Key, string Value)> entries)
    {
        foreach (var (key, value) in entries)
        {
            // Taken apart anew each time, because every splice moves what comes after it.
            var table = find(StudyFileText.Parse(text));
            text = table.Find(key) is { } entry
                ? Replace(text, entry.Value!, value)
                : AddEntry(text, table, $"{TomlText.Key(key)} = {value}");
        }

        return text;
    }

    private static string Replace(string text, ValueSyntax old, string value) =>
        string.Concat(text.AsSpan(0, old.Span.Start.Offset), value, text.AsSpan(EndOf(old)));

    private static string AddEntry(string text, TableText table, string entry)
    {
        if (table.Node is InlineTableSyntax inline)
        {
            return inline.Items.ChildrenCount == 0
                ? text.Insert(inline.OpenBrace!.Span.Start.Offset + 1, $" {entry} ")
                : text.Insert(EndOf(inline.Items.Last().KeyValue!.Value!), $", {entry}");
        }

        // Dotted entries count here: the new line goes below the last line that belongs to the table.
        var last = table.Node switch
        {
            TableSyntaxBase block => block.Items.LastOrDefault()?.Value ?? (SyntaxNode)block.CloseBracket!,
            DocumentSyntax document => document.KeyValues.LastOrDefault()?.Value,
            _ => null,
        };
        return last is null ? text.Insert(0, entry + LineEnd(text)) : InsertLine(text, EndOf(last), entry);
    }

    /// <summary>Puts a line below the line that an offset is in, which may end in a comment.</summary>
    private static string InsertLine(string text, int offset, string line)
    {
        var lineFeed = text.IndexOf('\n', offset);
        return lineFeed < 0 ? text + LineEnd(text) + line + LineEnd(text) : text.Insert(lineFeed + 1, line + LineEnd(text));
    }

    private static string AddTable(string text, string name, IReadOnlyList<(string Key, string Value)> entries)
    {
        if (StudyFileText.Parse(text).Root.Find(name)?.Value is ArraySyntax array)
        {
            var table = $"{{ {string.Join(", ", entries.Select(entry => $"{TomlText.Key(entry.Key)} = {entry.Value}"))} }}";
            return array.Items.ChildrenCount == 0
                ? text.Insert(array.OpenBracket!.Span.Start.Offset + 1, table)
                : text.Insert(EndOf(array.Items.Last().Value!), $", {table}");
        }

        var end = LineEnd(text);
        var added = new StringBuilder(text);
        if (text.Length > 0 && !text.EndsWith('\n'))
        {
            added.Append(end);
        }

        added.Append($"{end}[[{name}]]{end}");
        foreach (var (key, value) in entries)
        {
            added.Append($"{TomlText.Key(key)} = {value}{end}");
        }

        return added.ToString();
    }

    private static int EndOf(SyntaxNode node) => node.Span.Start.Offset + node.Span.Length;

    private static string LineEnd(string text)
    {
        var lineFeed = text.IndexOf('\n', StringComparison.Ordinal);
        return lineFeed > 0 && text[lineFeed - 1] == '\r' ? "\r\n" : "\n";
    }
}
