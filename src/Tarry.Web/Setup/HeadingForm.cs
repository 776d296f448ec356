using System.Globalization;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Web.Setup;

/// <summary>What is entered for a study as a whole.</summary>
public sealed class HeadingForm
{
    /// <summary>A form filled with what the study file says.</summary>
    public HeadingForm(StudyFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        (Title, Reference, MarginMs) = (file.Title, file.Reference, file.MarginMs.ToString("R", CultureInfo.InvariantCulture));
    }

    /// <summary>The title.</summary>
    public string? Title { get; set; }

    /// <summary>The reference condition's id.</summary>
    public string? Reference { get; set; }

    /// <summary>The smallest difference that matters, in milliseconds, with a decimal point.</summary>
    public string? MarginMs { get; set; }

    /// <summary>What is wrong, by the name of the field.</summary>
    /// <param name="file">The study file.</param>
    public IReadOnlyDictionary<string, string> Problems(StudyFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var problems = new Dictionary<string, string>(StringComparer.Ordinal);
        if (string.IsNullOrWhiteSpace(Title))
        {
            problems[nameof(Title)] = "Give it a title.";
        }

        if (string.IsNullOrWhiteSpace(Reference) ? file.Reference is not null : !Names.IsName(Reference.Trim()))
        {
            problems[nameof(Reference)] = "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.";
        }

        if (Margin is null)
        {
            problems[nameof(MarginMs)] = "Give a number of milliseconds more than 0, with a decimal point: 0.5.";
        }

        return problems;
    }

    /// <summary>Writes what is new into the study file.</summary>
    public void Save(Study study, StudyLock held)
    {
        ArgumentNullException.ThrowIfNull(study);
        if (Title!.Trim() is var title && title != study.File.Title)
        {
            study.SetTitle(held, title);
        }

        if (!string.IsNullOrWhiteSpace(Reference) && Reference.Trim() is var reference && reference != study.File.Reference)
        {
            study.SetReference(held, reference);
        }

        if (Margin is { } margin && margin != study.File.MarginMs)
        {
            study.SetMargin(held, margin);
        }
    }

    private double? Margin => double.TryParse(MarginMs, NumberStyles.Float, CultureInfo.InvariantCulture, out var margin) && double.IsFinite(margin) && margin > 0 ? margin : null;
}
