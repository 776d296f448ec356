namespace Tarry.Findings.Sticks.Measures;

/// <summary>What a measure is: its name, unit, definition, formula, source and what it does not tell.</summary>
/// <param name="Name">Its name in a sentence.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Preference">Which of two sticks does better by it.</param>
/// <param name="Kind">What values it can have.</param>
/// <param name="Definition">What is measured.</param>
/// <param name="Formula">How.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="NotTold">What it does not tell.</param>
public sealed record StickMeasureText(string Name, StickUnit Unit, StickPreference Preference, StickValueKind Kind, string Definition, string Formula, string Source, string NotTold)
{
    /// <summary>The text of a measure.</summary>
    /// <param name="measure">The measure.</param>
    public static StickMeasureText Of(StickMeasure measure) => StickMeasureTexts.All[measure];

    /// <summary>The measure's key: its name, part and unit, such as <c>centre_offset_x_percent</c>.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="part">Of which part.</param>
    public static string Key(StickMeasure measure, StickPart part)
    {
        var of = part == StickPart.Whole ? "" : "_" + PartKey(part);
        return $"{MeasureKey(measure)}{of}_{UnitKey(Of(measure).Unit)}";
    }

    /// <summary>The measure in that key, such as <c>centre_offset</c>.</summary>
    /// <param name="measure">The measure.</param>
    public static string MeasureKey(StickMeasure measure) => Words(measure.ToString());

    /// <summary>The part in that key, such as <c>x</c>; the whole stick stands in none.</summary>
    /// <param name="part">The part.</param>
    public static string PartKey(StickPart part) => Words(part.ToString());

    /// <summary>The unit in that key, such as <c>percent</c>.</summary>
    /// <param name="unit">The unit.</param>
    public static string UnitKey(StickUnit unit) => unit switch
    {
        StickUnit.Percent => "percent",
        StickUnit.PercentPerMinute => "percent_per_minute",
        StickUnit.RelativePercent => "relative_percent",
        StickUnit.Degrees => "deg",
        StickUnit.Milliseconds => "ms",
        StickUnit.Steps => "steps",
        StickUnit.Bits => "bits",
        _ => "count",
    };

    /// <summary>The unit as text shows it.</summary>
    /// <param name="unit">The unit.</param>
    public static string Symbol(StickUnit unit) => unit switch
    {
        StickUnit.Percent or StickUnit.RelativePercent => "%",
        StickUnit.PercentPerMinute => "%/min",
        StickUnit.Degrees => "deg",
        StickUnit.Milliseconds => "ms",
        StickUnit.Steps => "steps",
        StickUnit.Bits => "bits",
        _ => "",
    };

    private static string Words(string pascalCase) => Hyphenated.Name(pascalCase).Replace('-', '_');
}
