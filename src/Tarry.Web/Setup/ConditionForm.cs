using System.Globalization;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Web.Setup;

/// <summary>What is entered for a condition.</summary>
public sealed class ConditionForm
{
    private const string Rate = "nominal_report_hz";
    private readonly Dictionary<string, string> levels;
    private readonly string? existing;

    /// <summary>A form for a new condition, or filled with one that the study has.</summary>
    public ConditionForm(ConditionEntry? entry)
    {
        existing = entry?.Id;
        Id = entry?.Id;
        levels = entry?.Factors.ToDictionary(StringComparer.Ordinal) ?? [];
        NominalReportHz = entry?.NominalReportHz?.ToString("R", CultureInfo.InvariantCulture);
    }

    /// <summary>The factors that are asked for, with their labels and what helps to enter them.</summary>
    public static IReadOnlyList<(string Key, string Label, string Hint)> Factors { get; } =
    [
        ("device", "Device", "Maker and model."),
        ("unit", "Unit", "Which specimen: its serial number, or a mark of yours."),
        ("device_firmware", "Device firmware", "As the device or its maker states it."),
        ("link", "Link", "usb, dongle, radio, ..."),
        ("layer", "Software layer", "What stands between host and application; none."),
        ("control", "Control", "button, trigger or stick axis."),
        ("placement", "Placement", "How far from the receiver, and where."),
    ];

    /// <summary>Its name in the study.</summary>
    public string? Id { get; set; }

    /// <summary>Reports a second that the maker states, with a decimal point; blank where not known.</summary>
    public string? NominalReportHz { get; set; }

    /// <summary>Whether it is new.</summary>
    public bool IsNew => existing is null;

    /// <summary>The level of a factor; blank for none.</summary>
    public string? this[string factor]
    {
        get => levels.GetValueOrDefault(factor);
        set => levels[factor] = value?.Trim() ?? "";
    }

    /// <summary>What is wrong, by the name of the field.</summary>
    /// <param name="file">The study file.</param>
    public IReadOnlyDictionary<string, string> Problems(StudyFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var problems = new Dictionary<string, string>(StringComparer.Ordinal);
        if (Id is null || !Names.IsName(Id.Trim()))
        {
            problems[nameof(Id)] = "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.";
        }
        else if (IsNew && file.Conditions.Any(condition => condition.Id == Id.Trim()))
        {
            problems[nameof(Id)] = "The study has a condition of this name. Give another, or change that one.";
        }

        if (!string.IsNullOrWhiteSpace(NominalReportHz) && Hz is null)
        {
            problems[nameof(NominalReportHz)] = "Give a number of reports a second more than 0, with a decimal point; or leave it empty.";
        }

        return problems;
    }

    /// <summary>Writes it into the study file: what is entered is set, what was emptied is taken out, everything else stays.</summary>
    public void Save(Study study, StudyLock held)
    {
        ArgumentNullException.ThrowIfNull(study);
        var id = Id!.Trim();
        study.AddCondition(held, new ConditionEntry
        {
            Id = id,
            Factors = new OrderedDictionary<string, string>(levels.Where(level => level.Value.Length > 0)),
            NominalReportHz = Hz,
        });
        string[] emptied = [.. levels.Where(level => level.Value.Length == 0).Select(level => level.Key), .. Hz is null ? [Rate] : Array.Empty<string>()];
        study.ClearCondition(held, id, emptied);
    }

    private double? Hz => double.TryParse(NominalReportHz, NumberStyles.Float, CultureInfo.InvariantCulture, out var hz) && double.IsFinite(hz) && hz > 0 ? hz : null;
}
