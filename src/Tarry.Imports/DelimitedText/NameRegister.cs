using Tarry.Studies.Sessions;

namespace Tarry.Imports.DelimitedText;

/// <summary>Turns the texts of a column into names, and sees to it that two texts never become one name.</summary>
/// <typeparam name="T">What is kept beside a name.</typeparam>
/// <param name="what">What the names are of, for messages.</param>
/// <param name="create">Makes what is kept beside a name from the name and its text.</param>
internal sealed class NameRegister<T>(string what, Func<string, string, T> create)
    where T : class
{
    private readonly Dictionary<string, Entry> byText = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> textOfName = new(StringComparer.Ordinal);

    /// <summary>What a text stands for, made if it is new.</summary>
    public Entry Resolve(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        if (Find(cell) is { } known)
        {
            return known;
        }

        var text = cell.ToString();
        return byText[text] = Make(text);
    }

    /// <summary>What a text stands for, if it has been met.</summary>
    public Entry? Find(ReadOnlySpan<char> cell) =>
        byText.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(cell.Trim(), out var known) ? known : null;

    private Entry Make(string text)
    {
        if (text.Length == 0)
        {
            return new Entry(null, null, $"the {what} is empty");
        }

        if (text.Any(character => char.IsControl(character) || character == '\uFFFD'))
        {
            return new Entry(null, null, $"the {what} {Excerpt.Of(text)} holds characters that are not UTF-8 text");
        }

        var name = Names.IsName(text) ? text : Names.FromText(text);
        if (name is null)
        {
            return new Entry(null, null, $"no name can be made of the {what} {Excerpt.Of(text)}; use letters or digits");
        }

        return textOfName.TryAdd(name, text)
            ? new Entry(name, create(name, text), null)
            : new Entry(null, null, $"the {what} {Excerpt.Of(text)} would become {name}, as {Excerpt.Of(textOfName[name])} already does; rename one");
    }

    /// <summary>A text's name and what is kept beside it, or why it has none.</summary>
    public sealed record Entry(string? Name, T? Kept, string? Problem);
}
