using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Watching;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>The host's input devices in words.</summary>
internal static class HostInputText
{
    private const int Bars = 20;
    private const int LongestBar = 50;

    public static void Write(IReadOnlyList<HostInputDescription> devices, Terminal terminal)
    {
        foreach (var device in devices)
        {
            terminal.Out.WriteLine($"{device.Path}  {device.Name}{Origin(device)}{(device.IsTextKeyboard ? "  [text keyboard]" : "")}");
            WriteLine("buttons", device.Buttons.Select(code => InputCode.Name(InputCode.Key, code)), device.IsTextKeyboard);
            WriteLine("axes", device.Axes.Select(axis => Invariant($"{InputCode.Name(InputCode.Absolute, axis.Code)} {axis.Minimum}..{axis.Maximum}")), false);
            if (device.Obstacle is { } obstacle)
            {
                terminal.Out.WriteLine($"    {obstacle}");
            }
        }

        if (devices.Count == 0)
        {
            terminal.Error.WriteLine("tarry: no input device was found. Plug one in; a container or a remote shell may have none.");
        }

        void WriteLine(string what, IEnumerable<string> names, bool countOnly)
        {
            var all = names.ToList();
            if (all.Count > 0)
            {
                terminal.Out.WriteLine(countOnly ? Invariant($"    {what}: {all.Count}") : $"    {what}: {string.Join(", ", all)}");
            }
        }
    }

    /// <summary>What a watch has seen, with the histogram of the intervals up to twice their p99.</summary>
    public static void Write(IHostInputDevice device, ReportIntervals intervals, Terminal terminal)
    {
        var value = intervals.SoFar();
        terminal.Out.WriteLine($"{device.Description.Name} ({device.Description.Identity()}), stamps: {device.Clock.InWords()}");
        if (value is not { MedianUs: { } median, P99Us: { } p99 })
        {
            terminal.Out.WriteLine(Invariant($"{value.Reports} reports; an interval takes two."));
            return;
        }

        terminal.Out.WriteLine(Invariant(
            $"{value.Reports} reports, {value.Intervals} intervals: median {median / 1000.0:0.000} ms, p99 {p99 / 1000.0:0.000} ms, shortest {value.ShortestUs / 1000.0:0.000} ms, longest {value.LongestUs / 1000.0:0.000} ms"));
        terminal.Out.WriteLine(Invariant(
            $"{value.Missed} slots missed, {value.Doubled} doubled, {value.Pauses} pauses (over {ReportIntervals.LongestGap} medians), {device.Losses} losses in the system, {value.Backwards} stamps that went back"));
        var width = Math.Max(1, (Math.Min(2 * p99, value.LongestUs) / Bars) + 1);
        var bins = intervals.Lengths.GroupBy(entry => Math.Min(entry.Us / width, Bars)).ToDictionary(bin => bin.Key, bin => bin.Sum(entry => (long)entry.Count));
        var most = bins.Values.Max();
        for (long bin = 0; bin <= Bars; bin++)
        {
            if (bins.TryGetValue(bin, out var count))
            {
                var bar = new string('#', Math.Max(1, (int)(LongestBar * count / most)));
                terminal.Out.WriteLine(Invariant($"  {bin * width / 1000.0,8:0.000} ms{(bin == Bars ? "+" : " ")} {count,8} {bar}"));
            }
        }
    }

    private static string Origin(HostInputDescription device)
    {
        var identity = device.Identity();
        return identity == device.Path ? "" : $"  ({identity[..^(device.Path.Length + 1)]})";
    }
}
