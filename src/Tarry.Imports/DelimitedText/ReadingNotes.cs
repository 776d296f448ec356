using System.Globalization;

namespace Tarry.Imports.DelimitedText;

/// <summary>How a file was read, for the record and in words.</summary>
internal sealed class ReadingNotes
{
    private readonly Dictionary<string, string> read = new(StringComparer.Ordinal);

    public ReadingNotes(ColumnMap columns, DelimitedTextOptions options, char delimiter, long rounded)
    {
        read["delimiter"] = delimiter == '\t' ? "tab" : delimiter.ToString();
        read["decimal_comma"] = options.DecimalComma ? "true" : "false";
        if (options.Header is not null)
        {
            read["header"] = string.Join(',', columns.Header);
        }

        if (options.CommentPrefix != '#')
        {
            read["comment"] = options.CommentPrefix.ToString();
        }

        Column("condition", columns, columns.Condition, options.Condition);
        Column("sitting", columns, columns.Sitting, options.Sitting);
        Column("seq", columns, columns.Sequence, null);
        Column("press_time", columns, columns.PressTime, null);
        Column("latency", columns, columns.Latency, null);
        Column("outcome", columns, columns.Outcome, null);
        read["latency_unit"] = TimeUnits.Symbol(columns.LatencyUnit);
        if (columns.PressTime >= 0)
        {
            read["press_time_unit"] = TimeUnits.Symbol(columns.PressTimeUnit);
        }

        if (rounded > 0)
        {
            read["rounded_to_ns"] = rounded.ToString(CultureInfo.InvariantCulture);
        }

        Lines = [.. Say(columns, rounded)];
    }

    /// <summary>The options, given and inferred, by name.</summary>
    public IReadOnlyDictionary<string, string> Options => read;

    /// <summary>What the user should know, in words.</summary>
    public IReadOnlyList<string> Lines { get; }

    /// <summary>The options of one session: with the texts that its names were made of, where they differ.</summary>
    public IReadOnlyDictionary<string, string> ForSession(ImportedFileSession session)
    {
        var texts = new Dictionary<string, string>(read, StringComparer.Ordinal);
        if (session.SittingText != session.Key.Sitting)
        {
            texts["sitting_text"] = session.SittingText;
        }

        if (session.ConditionText != session.Key.Condition)
        {
            texts["condition_text"] = session.ConditionText;
        }

        return texts;
    }

    private static IEnumerable<string> Say(ColumnMap columns, long rounded)
    {
        foreach (var (what, index, unit) in new[] { ("latency", columns.Latency, columns.LatencyUnit), ("press time", columns.PressTime, columns.PressTimeUnit) })
        {
            if (index >= 0 && TimeUnits.FromSuffix(columns.Header[index]) is { } named && named != unit)
            {
                yield return $"the {what} column {columns.Header[index]} was read in {TimeUnits.Symbol(unit)}, as the option says, and not in {TimeUnits.Symbol(named)}";
            }
        }

        if (columns.Unused.Count > 0)
        {
            yield return $"nothing was taken from the columns {string.Join(", ", columns.Unused.Take(20).Select(name => Excerpt.Of(name)))}; --factor NAME takes one as a factor";
        }

        if (rounded > 0)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{rounded} times were finer than a nanosecond and were rounded to it");
        }
    }

    private void Column(string what, ColumnMap columns, int index, string? fixedText)
    {
        if (index >= 0)
        {
            read[$"{what}_column"] = columns.Header[index];
        }
        else if (fixedText is not null)
        {
            read[what] = fixedText;
        }
    }
}
