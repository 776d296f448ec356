using System.Globalization;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Shelf;

/// <summary>What is entered for a new study, and whether it can be made.</summary>
public sealed class NewStudyForm
{
    private const string UsualMargin = "0.5";
    private string? folder;

    /// <summary>Nothing is wrong.</summary>
    public static IReadOnlyDictionary<string, string> NoProblems { get; } = new Dictionary<string, string>();

    /// <summary>Its title.</summary>
    public string? Title { get; set; }

    /// <summary>The name of its folder; made from the title until one is entered.</summary>
    public string? Folder
    {
        get => folder ?? Names.FromText(Title ?? "");
        set => folder = string.IsNullOrWhiteSpace(value) ? null : value.Trim();
    }

    /// <summary>The id of the condition that is the rig itself; blank for none yet.</summary>
    public string? Reference { get; set; } = "bench-board";

    /// <summary>The smallest difference that matters, in milliseconds, with a decimal point.</summary>
    public string? MarginMs { get; set; } = UsualMargin;

    /// <summary>What is wrong, by the name of the field; empty where a study can be made.</summary>
    /// <param name="shelf">Where it would be made.</param>
    public IReadOnlyDictionary<string, string> Problems(StudyShelf shelf)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        var problems = new Dictionary<string, string>(StringComparer.Ordinal);
        if (string.IsNullOrWhiteSpace(Title))
        {
            problems[nameof(Title)] = "Give it a title: what you test, as a reader should see it.";
        }

        if (Folder is not { } name || !Names.IsName(name))
        {
            problems[nameof(Folder)] = "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.";
        }
        else if (Path.Exists(Path.Combine(shelf.Folder, name)))
        {
            problems[nameof(Folder)] = "There is a folder or a file of this name. Give another.";
        }

        if (!string.IsNullOrWhiteSpace(Reference) && !Names.IsName(Reference.Trim()))
        {
            problems[nameof(Reference)] = "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit; or leave it empty.";
        }

        if (Margin is null)
        {
            problems[nameof(MarginMs)] = "Give a number of milliseconds more than 0, with a decimal point: 0.5.";
        }

        return problems;
    }

    /// <summary>Makes the study.</summary>
    /// <returns>Its name on the shelf.</returns>
    /// <exception cref="StudyException">It cannot be made; nothing was.</exception>
    public string Create(StudyShelf shelf)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        Study.Create(
            Path.Combine(shelf.Folder, Folder!),
            Title!.Trim(),
            string.IsNullOrWhiteSpace(Reference) ? null : Reference.Trim(),
            Margin!.Value);
        return Folder!;
    }

    private double? Margin => double.TryParse(MarginMs, NumberStyles.Float, CultureInfo.InvariantCulture, out var margin) && double.IsFinite(margin) && margin > 0 ? margin : null;
}
