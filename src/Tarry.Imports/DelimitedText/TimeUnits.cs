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

    /// <summary>The unit that ends a header name, such as <c>latency_ms</c>, <c>latency (ms)</c> or <c>latency [ms]</c>; null if none does.</summary>
    internal static TimeUnit? FromSuffix(string header)
    {
        var start = header.LastIndexOfAny(['_', '(', '[']);
        var end = start < 0 || header[start] == '_' ? header.Length
            : header.EndsWith(header[start] == '(' ? ')' : ']') ? header.Length - 1
            : -1;
        return start < 0 || end < start ? null : FromSymbol(header[(start + 1)..end].Trim().ToLowerInvariant());
    }

    /// <summary>A header name in the usual form: <c>latency (ms)</c> and <c>latency [ms]</c> as <c>latency_ms</c>; what ends with no unit as it is.</summary>
    internal static string UsualName(string header) =>
        header.EndsWith(')') || header.EndsWith(']')
            ? FromSuffix(header) is { } unit ? $"{header[..header.LastIndexOfAny(['(', '['])].TrimEnd().Replace(' ', '_')}_{Symbol(unit)}" : header
            : header;

    /// <summary>How many nanoseconds a unit has.</summary>
    internal static long Nanoseconds(TimeUnit unit) => unit switch
    {
        TimeUnit.Nanoseconds => 1,
        TimeUnit.Microseconds => 1_000,
        TimeUnit.Milliseconds => 1_000_000,
        _ => 1_000_000_000,
    };
}
