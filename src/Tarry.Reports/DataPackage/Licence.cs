namespace Tarry.Reports.DataPackage;

/// <summary>The licence of a publication: its identifier by the SPDX list, and where its text is for the usual open-data ones.</summary>
public sealed record Licence
{
    private static readonly Dictionary<string, (string Title, string Address)> Usual = new(StringComparer.OrdinalIgnoreCase)
    {
        ["CC0-1.0"] = ("Creative Commons Zero 1.0 Universal", "https://creativecommons.org/publicdomain/zero/1.0/"),
        ["CC-BY-4.0"] = ("Creative Commons Attribution 4.0 International", "https://creativecommons.org/licenses/by/4.0/"),
        ["CC-BY-SA-4.0"] = ("Creative Commons Attribution Share Alike 4.0 International", "https://creativecommons.org/licenses/by-sa/4.0/"),
        ["ODC-By-1.0"] = ("Open Data Commons Attribution License 1.0", "https://opendatacommons.org/licenses/by/1-0/"),
        ["ODbL-1.0"] = ("Open Data Commons Open Database License 1.0", "https://opendatacommons.org/licenses/odbl/1-0/"),
        ["PDDL-1.0"] = ("Open Data Commons Public Domain Dedication and License 1.0", "https://opendatacommons.org/licenses/pddl/1-0/"),
    };

    private Licence(string id, string? title, string? address) => (Id, Title, Address) = (id, title, address);

    /// <summary>The identifier.</summary>
    public string Id { get; }

    /// <summary>The full name; null for a licence that is not one of the usual ones.</summary>
    public string? Title { get; }

    /// <summary>Where the text is; null likewise.</summary>
    public string? Address { get; }

    /// <summary>The identifiers whose title and address are known.</summary>
    public static IReadOnlyCollection<string> UsualIds => Usual.Keys;

    /// <summary>The licence of an identifier; null if the text cannot be one (letters, digits, '.', '_' and '-').</summary>
    public static Licence? FromId(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        if (id.Length == 0 || !id.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '.' or '_' or '-'))
        {
            return null;
        }

        return Usual.TryGetValue(id, out var usual)
            ? new Licence(Usual.Keys.First(key => key.Equals(id, StringComparison.OrdinalIgnoreCase)), usual.Title, usual.Address)
            : new Licence(id, null, null);
    }
}
