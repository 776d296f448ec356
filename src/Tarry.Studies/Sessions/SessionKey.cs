using Tarry.Studies.Sticks;

namespace Tarry.Studies.Sessions;

/// <summary>
/// Which session: one condition in one sitting, and of a stick one procedure. Written <c>sitting.condition</c> or
/// <c>sitting.condition.procedure</c>, and so is its folder.
/// </summary>
/// <remarks>The parts are names of lower-case letters, digits, <c>-</c> and <c>_</c>, 1 to 64 characters, so that the dot separates them and every file system takes them.</remarks>
public readonly record struct SessionKey : IComparable<SessionKey>
{
    /// <summary>A key from its names.</summary>
    /// <param name="sitting">The set-up of the bench.</param>
    /// <param name="condition">The condition tested.</param>
    /// <param name="procedure">What was done with the stick, of a session of that kind; null for others.</param>
    /// <exception cref="ArgumentException">A name is not of the allowed form.</exception>
    public SessionKey(string sitting, string condition, StickProcedure? procedure = null)
    {
        Procedure = procedure;
        Sitting = Names.Require(sitting, "sitting");
        Condition = Names.Require(condition, "condition");
    }

    /// <summary>The set-up of the bench.</summary>
    public string Sitting { get; }

    /// <summary>The condition tested.</summary>
    public string Condition { get; }

    /// <summary>What was done with the stick, of a session of that kind; null for others: one set-up of the bench can hold several.</summary>
    public StickProcedure? Procedure { get; }

    /// <summary>Reads <c>sitting.condition</c> or <c>sitting.condition.procedure</c>.</summary>
    /// <exception cref="ArgumentException">The text is not of that form.</exception>
    public static SessionKey Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split('.');
        return (parts.Length == 2 || (parts.Length == 3 && StickProcedures.Find(parts[2]) is not null))
            ? new SessionKey(parts[0], parts[1], parts.Length == 3 ? StickProcedures.Find(parts[2]) : null)
            : throw new ArgumentException($"'{text}' is not a session; write it as sitting.condition, or of a stick as sitting.condition.procedure, such as monday.quill-usb.rest.", nameof(text));
    }

    /// <inheritdoc/>
    public int CompareTo(SessionKey other)
    {
        var bySitting = string.CompareOrdinal(Sitting, other.Sitting);
        var byCondition = bySitting != 0 ? bySitting : string.CompareOrdinal(Condition, other.Condition);
        return byCondition != 0 ? byCondition : Nullable.Compare(Procedure, other.Procedure);
    }

    /// <summary>The key as its folder is named.</summary>
    public override string ToString() => Procedure is { } procedure
        ? $"{Sitting}.{Condition}.{StickProcedures.Name(procedure)}"
        : $"{Sitting}.{Condition}";

    /// <summary>Whether the left sorts first.</summary>
    public static bool operator <(SessionKey left, SessionKey right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left sorts last.</summary>
    public static bool operator >(SessionKey left, SessionKey right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left does not sort last.</summary>
    public static bool operator <=(SessionKey left, SessionKey right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left does not sort first.</summary>
    public static bool operator >=(SessionKey left, SessionKey right) => left.CompareTo(right) >= 0;
}
