using System.Text.RegularExpressions;

namespace Tarry.Studies.Sessions;

/// <summary>The form of the names of sittings and conditions.</summary>
public static partial class Names
{
    /// <summary>Whether a name is 1 to 64 lower-case letters, digits, <c>-</c> or <c>_</c>, and begins with a letter or digit.</summary>
    public static bool IsName(string text) => NameForm().IsMatch(text);

    /// <summary>The name, if it is of the form.</summary>
    /// <exception cref="ArgumentException">It is not.</exception>
    public static string Require(string text, string what) =>
        text is not null && IsName(text)
            ? text
            : throw new ArgumentException(
                $"The {what} '{text}' is not a name; use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.",
                nameof(text));

    /// <summary>A name made from any text, such as a CSV cell: lower case, other characters as '-'; null if nothing is left.</summary>
    public static string? FromText(string text)
    {
        var name = OtherCharacters().Replace(text.Trim().ToLowerInvariant(), "-").Trim('-', '_');
        return name.Length == 0 ? null : name[..Math.Min(name.Length, 64)];
    }

    [GeneratedRegex("^[a-z0-9][a-z0-9_-]{0,63}$")]
    private static partial Regex NameForm();

    [GeneratedRegex("[^a-z0-9_-]+")]
    private static partial Regex OtherCharacters();
}
