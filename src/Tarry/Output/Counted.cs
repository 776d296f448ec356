using static System.FormattableString;

namespace Tarry.Output;

/// <summary>A count with its noun for a terminal: no thousands apart and plain spaces, so that a script can match it.</summary>
internal static class Counted
{
    public static string Of(long count, string noun) => Invariant($"{count} {noun}{(count == 1 ? "" : "s")}");
}
