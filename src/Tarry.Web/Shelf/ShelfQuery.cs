namespace Tarry.Web.Shelf;

/// <summary>Which studies of the shelf are looked for.</summary>
/// <param name="Text">Words that must all be in the title, the name, a condition or a level; null for any.</param>
/// <param name="From">The first day of the data that counts; null for any.</param>
/// <param name="To">The last day of the data that counts; null for any.</param>
/// <param name="Device">A device that must be in it; null for any.</param>
/// <param name="Link">A link that must be in it; null for any.</param>
/// <param name="Layer">A software layer that must be in it; null for any.</param>
public sealed record ShelfQuery(string? Text, DateOnly? From, DateOnly? To, string? Device, string? Link, string? Layer)
{
    /// <summary>Whether it asks for everything.</summary>
    public bool IsEmpty => string.IsNullOrWhiteSpace(Text) && From is null && To is null && Device is null && Link is null && Layer is null;

    /// <summary>Whether a study is among those looked for. One that cannot be read, or has no data, has neither dates nor levels to be found by.</summary>
    public bool Finds(StudySummary study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return HasWords(study)
            && HasLevel(study, "device", Device)
            && HasLevel(study, "link", Link)
            && HasLevel(study, "layer", Layer)
            && (From is null || study.Dates?.Last >= From)
            && (To is null || study.Dates?.First <= To);
    }

    private static bool HasLevel(StudySummary study, string factor, string? level) =>
        level is null || study.Levels[factor].Contains(level, StringComparer.OrdinalIgnoreCase);

    private bool HasWords(StudySummary study)
    {
        var words = (Text ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        return words.All(word => Texts(study).Any(text => text.Contains(word, StringComparison.CurrentCultureIgnoreCase)));
    }

    private static IEnumerable<string> Texts(StudySummary study) =>
        [study.Title, study.Name, .. study.Conditions, .. study.Levels.SelectMany(levels => levels), .. study.Sittings];
}
