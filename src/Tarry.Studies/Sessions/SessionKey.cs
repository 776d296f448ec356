namespace Tarry.Studies.Sessions;

/// <summary>Which session: one condition in one sitting. Written <c>sitting.condition</c>, and so is its folder.</summary>
/// <remarks>Both parts are names of lower-case letters, digits, <c>-</c> and <c>_</c>, 1 to 64 characters, so that the dot separates them and every file system takes them.</remarks>
public readonly record struct SessionKey : IComparable<SessionKey>
{
    /// <summary>A key from its two names.</summary>
    /// <exception cref="ArgumentException">A name is not of the allowed form.</exception>
    public SessionKey(string sitting, string condition)
    {
        Sitting = Names.Require(sitting, "sitting");
        Condition = Names.Require(condition, "condition");
    }

    /// <summary>The set-up of the bench.</summary>
    public string Sitting { get; }

    /// <summary>The condition tested.</summary>
    public string Condition { get; }

    /// <summary>Reads <c>sitting.condition</c>.</summary>
    /// <exception cref="ArgumentException">The text is not of that form.</exception>
    public static SessionKey Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split('.');
        return parts.Length == 2
            ? new SessionKey(parts[0], parts[1])
            : throw new ArgumentException($"'{text}' is not a session; write it as sitting.condition.", nameof(text));
    }

    /// <inheritdoc/>
    public int CompareTo(SessionKey other)
    {
        var bySitting = string.CompareOrdinal(Sitting, other.Sitting);
        return bySitting != 0 ? bySitting : string.CompareOrdinal(Condition, other.Condition);
    }

    /// <summary>The key as its folder is named.</summary>
    public override string ToString() => $"{Sitting}.{Condition}";

    /// <summary>Whether the left sorts first.</summary>
    public static bool operator <(SessionKey left, SessionKey right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left sorts last.</summary>
    public static bool operator >(SessionKey left, SessionKey right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left does not sort last.</summary>
    public static bool operator <=(SessionKey left, SessionKey right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left does not sort first.</summary>
    public static bool operator >=(SessionKey left, SessionKey right) => left.CompareTo(right) >= 0;
}
