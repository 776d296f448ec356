using System.Globalization;
using System.Text;

namespace Tarry.Imports.Tests.ValueChangeDump;

/// <summary>Writes small dumps by the syntax of IEEE 1364.</summary>
internal static class DumpText
{
    public const string Header =
        "$date today $end\n$timescale 1 us $end\n$scope module bench $end\n$var wire 1 ! contact $end\n$var wire 1 \" lamp $end\n$upscope $end\n$enddefinitions $end\n";

    /// <summary>A dump of a contact and a lamp, from changes such as (1000, "1!").</summary>
    public static string Of(params (long Time, string Change)[] changes)
    {
        var text = new StringBuilder(Header).Append("#0 $dumpvars 0! 0\" $end\n");
        foreach (var (time, change) in changes.OrderBy(change => change.Time))
        {
            text.Append(CultureInfo.InvariantCulture, $"#{time} {change}\n");
        }

        return text.ToString();
    }

    /// <summary>Presses of 20 ms, one every 100 ms from 10 ms on, each answered after its latency in microseconds.</summary>
    public static string Presses(params ReadOnlySpan<long> latencies)
    {
        var changes = new List<(long, string)>();
        for (var index = 0; index < latencies.Length; index++)
        {
            var press = 10_000 + (100_000L * index);
            changes.AddRange([(press, "1!"), (press + 20_000, "0!"), (press + latencies[index], "1\""), (press + latencies[index] + 20_000, "0\"")]);
        }

        changes.Add((10_000 + (100_000L * latencies.Length), "0!"));
        return Of([.. changes]);
    }
}
