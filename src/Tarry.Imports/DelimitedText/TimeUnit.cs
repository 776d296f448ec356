namespace Tarry.Imports.DelimitedText;

/// <summary>The unit of a column of times.</summary>
public enum TimeUnit
{
    /// <summary>Billionths of a second, <c>ns</c>.</summary>
    Nanoseconds,

    /// <summary>Millionths of a second, <c>us</c>.</summary>
    Microseconds,

    /// <summary>Thousandths of a second, <c>ms</c>.</summary>
    Milliseconds,

    /// <summary>Seconds, <c>s</c>.</summary>
    Seconds,
}
