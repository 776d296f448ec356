namespace Tarry.Studies.Sessions;

/// <summary>What the segments of a session must hold to.</summary>
internal static class SegmentRules
{
    /// <summary>What is wrong, in words; null if nothing is.</summary>
    public static string? Broken(IReadOnlyList<Segment> segments)
    {
        if (segments.Count == 0)
        {
            return "there is no segment";
        }

        var index = segments.TakeWhile(segment => segment is { TickHz: > 0, FirstSequence: >= 0 }).Count();
        return index == segments.Count ? null : $"segment {index} is {segments[index]?.ToString() ?? "null"}; its tick frequency must be more than 0";
    }

    /// <summary>Refuses a record whose segments break a rule.</summary>
    /// <exception cref="ArgumentException">They do.</exception>
    public static void Require(SessionRecord record)
    {
        if (Broken(record.Segments) is { } broken)
        {
            throw new ArgumentException($"Session {record.Key} cannot be kept: {broken}.", nameof(record));
        }
    }
}
