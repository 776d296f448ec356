namespace Tarry.Studies.Sessions;

/// <summary>How many trials came to what. Every trial is in exactly one of the last five.</summary>
/// <param name="Used">Responses that enter the statistics.</param>
/// <param name="Missed">Nothing before the time-out.</param>
/// <param name="Early">Sooner than physically possible.</param>
/// <param name="Refused">Bad frames or rows.</param>
/// <param name="Excluded">Set aside by the study file, with a reason, whatever their outcome.</param>
public readonly record struct SessionCounts(long Used, long Missed, long Early, long Refused, long Excluded)
{
    /// <summary>All of them.</summary>
    public long Captured => Used + Missed + Early + Refused + Excluded;

    /// <summary>The sum of two counts.</summary>
    public static SessionCounts operator +(SessionCounts left, SessionCounts right) => left.Add(right);

    /// <summary>The sum of two counts.</summary>
    public SessionCounts Add(SessionCounts other) => new(
        Used + other.Used,
        Missed + other.Missed,
        Early + other.Early,
        Refused + other.Refused,
        Excluded + other.Excluded);
}
