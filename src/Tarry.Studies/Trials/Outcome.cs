namespace Tarry.Studies.Trials;

/// <summary>What came of a trial: exactly one of these. The numbers are on disk and never change.</summary>
public enum Outcome
{
    /// <summary>A response, with its latency.</summary>
    Response = 0,

    /// <summary>Nothing before the time-out.</summary>
    Missed = 1,

    /// <summary>A response before it was physically possible.</summary>
    Early = 2,

    /// <summary>A bad frame or row; the session record says why.</summary>
    Refused = 3,
}
