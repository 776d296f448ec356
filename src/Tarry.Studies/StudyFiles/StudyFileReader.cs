using System.Globalization;
using Tarry.Studies.Disk;
using Tarry.Studies.Sessions;
using Tomlyn.Syntax;

namespace Tarry.Studies.StudyFiles;

/// <summary>From the text of a study file to what it says, with every rule of <c>docs/study-format.md</c> checked.</summary>
internal static class StudyFileReader
{
    /// <summary>The margin where the file states none.</summary>
    public const double DefaultMarginMs = 0.5;

    public const string NominalReportKey = "nominal_report_hz";

    public static StudyFile Read(StudyFileText file)
    {
        RequireVersion(file.Root);
        var title = Text(file.Root, "title")
            ?? throw new StudyException($"{StudyFileText.FileName} has no title.", StudyFileText.FileName, "Add a line at its top: title = \"...\"");
        var reference = Name(file.Root, "reference");
        var margin = PositiveNumber(file.Root, "margin_ms") ?? DefaultMarginMs;
        var conditions = Conditions(file);
        var declared = conditions.Select(condition => condition.Id).ToHashSet(StringComparer.Ordinal);
        return new StudyFile(title, reference, margin, conditions, [.. file.Exclusions.Select(table => ReadExclusion(table, declared))])
        {
            Play = PlayEntryReader.Read(file),
        };
    }

    private static void RequireVersion(TableText root)
    {
        if (root.Find("format") is { } entry)
        {
            var version = (entry.Value as IntegerValueSyntax)?.Value
                ?? throw StudyFileText.Error(entry.Value!.Span, "'format' must be a whole number.");
            FormatVersions.Require(version, StudyFileText.FileName);
        }
    }

    private static List<ConditionEntry> Conditions(StudyFileText file)
    {
        var conditions = new List<ConditionEntry>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var table in file.Conditions)
        {
            var condition = ReadCondition(table);
            if (!seen.TryAdd(condition.Id, table.Node.Span.Start.Line + 1))
            {
                throw StudyFileText.Error(
                    table.Find("id")!.Value!.Span,
                    $"There are two conditions '{condition.Id}'; the first is at line {seen[condition.Id]}.",
                    "Give one of them another id, or remove it.");
            }

            conditions.Add(condition);
        }

        return conditions;
    }

    private static ConditionEntry ReadCondition(TableText table)
    {
        var factors = new OrderedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var entry in table.Entries)
        {
            var key = TableText.KeyOf(entry.Key!);
            if (key is not ("id" or NominalReportKey) && entry.Value is StringValueSyntax level)
            {
                factors.Add(key, level.Value!);
            }
        }

        return new ConditionEntry
        {
            Id = Name(table, "id") ?? throw StudyFileText.Error(table.Node.Span, "The condition has no id.", "Add a line: id = \"...\""),
            Factors = factors,
            NominalReportHz = PositiveNumber(table, NominalReportKey),
        };
    }

    private static Exclusion ReadExclusion(TableText table, HashSet<string> declared)
    {
        var session = table.Find("session")
            ?? throw StudyFileText.Error(table.Node.Span, "The exclusion names no session.", "Add a line: session = \"sitting.condition\"");
        var key = Key(session, Text(table, "session")!);
        if (!declared.Contains(key.Condition))
        {
            throw StudyFileText.Error(
                session.Value!.Span,
                $"The exclusion is of the condition '{key.Condition}', which the study does not have.",
                declared.Count == 0 ? "Declare the condition first." : $"The conditions are {string.Join(", ", declared)}.");
        }

        var reason = Text(table, "reason")
            ?? throw StudyFileText.Error(table.Node.Span, "The exclusion gives no reason.", "Add a line: reason = \"...\"; nothing is set aside without one.");
        var first = SequenceNumber(table, "first_seq");
        var last = SequenceNumber(table, "last_seq");
        return first > last
            ? throw StudyFileText.Error(table.Find("last_seq")!.Value!.Span, $"last_seq {last} is before first_seq {first}.")
            : new Exclusion(key, reason, first, last);
    }

    private static SessionKey Key(KeyValueSyntax entry, string text)
    {
        try
        {
            return SessionKey.Parse(text);
        }
        catch (ArgumentException)
        {
            throw StudyFileText.Error(entry.Value!.Span, $"'{text}' is not a session.", "Write it as sitting.condition.");
        }
    }

    private static string? Text(TableText table, string key)
    {
        if (table.Find(key) is not { } entry)
        {
            return null;
        }

        return entry.Value is StringValueSyntax { Value: { } text } && !string.IsNullOrWhiteSpace(text)
            ? text
            : throw StudyFileText.Error(entry.Value!.Span, $"'{key}' must be a text in quotes, not empty.");
    }

    private static string? Name(TableText table, string key)
    {
        var text = Text(table, key);
        return text is null || Names.IsName(text)
            ? text
            : throw StudyFileText.Error(
                table.Find(key)!.Value!.Span,
                $"'{text}' is not a name.",
                "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.");
    }

    private static double? PositiveNumber(TableText table, string key)
    {
        if (table.Find(key) is not { } entry)
        {
            return null;
        }

        var number = entry.Value switch
        {
            FloatValueSyntax real => real.Value,
            IntegerValueSyntax whole => whole.Value,
            _ => double.NaN,
        };
        return number > 0 && double.IsFinite(number)
            ? number
            : throw StudyFileText.Error(entry.Value!.Span, $"'{key}' must be a number more than 0, such as {DefaultMarginMs.ToString(CultureInfo.InvariantCulture)}.");
    }

    private static long? SequenceNumber(TableText table, string key)
    {
        if (table.Find(key) is not { } entry)
        {
            return null;
        }

        return entry.Value is IntegerValueSyntax { Value: >= 1 and var number }
            ? number
            : throw StudyFileText.Error(entry.Value!.Span, $"'{key}' must be a whole number, 1 or more.");
    }
}
