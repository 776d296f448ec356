using System.Text.RegularExpressions;

namespace Tarry.Studies.Sessions;

/// <summary>The form of the names of sittings and conditions.</summary>
public static partial class Names
{
    /// <summary>
    /// Whether a name is 1 to 64 lower-case letters, digits, <c>-</c> or <c>_</c>, begins with a letter or digit, and is not one that
    /// Windows keeps for a device (<c>con</c>, <c>nul</c>, <c>com1</c>): a folder of that name cannot be copied there.
    /// </summary>
    public static bool IsName(string text) => NameForm().IsMatch(text) && !DeviceName().IsMatch(text);

    /// <summary>The name, if it is of the form.</summary>
    /// <exception cref="ArgumentException">It is not.</exception>
    public static string Require(string text, string what) =>
        text is not null && IsName(text)
            ? text
            : throw new ArgumentException(
                $"The {what} '{text}' is not a name; use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit, and no device name such as 'con'.",
                nameof(text));

    /// <summary>A name made from any text, such as a CSV cell: lower case, other characters as '-'; null if nothing is left.</summary>
    public static string? FromText(string text)
    {
        var name = OtherCharacters().Replace(text.Trim().ToLowerInvariant(), "-").Trim('-', '_');
        if (DeviceName().IsMatch(name))
        {
            name += "-";
        }

        return name.Length == 0 ? null : name[..Math.Min(name.Length, 64)];
    }

    [GeneratedRegex(@"\A[a-z0-9][a-z0-9_-]{0,63}\z")]
    private static partial Regex NameForm();

    // Naming Files, Paths, and Namespaces, of the Windows documentation: reserved also before an extension.
    [GeneratedRegex(@"\A(con|prn|aux|nul|com[0-9]|lpt[0-9])\z")]
    private static partial Regex DeviceName();

    [GeneratedRegex("[^a-z0-9_-]+")]
    private static partial Regex OtherCharacters();
}
