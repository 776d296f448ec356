namespace Tarry.Imports.DelimitedText;

/// <summary>The symbols of the units of time, as header names and options write them.</summary>
public static class TimeUnits
{
    /// <summary>The unit of a symbol (<c>ns</c>, <c>us</c>, <c>ms</c>, <c>s</c>), or null.</summary>
    public static TimeUnit? FromSymbol(string symbol) => symbol switch
    {
        "ns" => TimeUnit.Nanoseconds,
        "us" or "µs" or "μs" => TimeUnit.Microseconds,
        "ms" => TimeUnit.Milliseconds,
        "s" => TimeUnit.Seconds,
        _ => null,
    };

    /// <summary>The symbol of a unit.</summary>
    public static string Symbol(TimeUnit unit) => unit switch
    {
        TimeUnit.Nanoseconds => "ns",
        TimeUnit.Microseconds => "us",
        TimeUnit.Milliseconds => "ms",
        TimeUnit.Seconds => "s",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "There are ns, us, ms and s."),
    };

    /// <summary>The unit that ends a header name, such as <c>latency_ms</c>; null if none does.</summary>
    internal static TimeUnit? FromSuffix(string header)
    {
        var underscore = header.LastIndexOf('_');
        return underscore < 0 ? null : FromSymbol(header[(underscore + 1)..].ToLowerInvariant());
    }

    /// <summary>How many nanoseconds a unit has.</summary>
    internal static long Nanoseconds(TimeUnit unit) => unit switch
    {
        TimeUnit.Nanoseconds => 1,
        TimeUnit.Microseconds => 1_000,
        TimeUnit.Milliseconds => 1_000_000,
        _ => 1_000_000_000,
    };
}
