using System.Globalization;
using Tarry.Rig.Frames;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>What the lines of a recording say: readings, steps, levels, the end.</summary>
internal sealed class RecordingNotes(StickRecordingHeader header)
{
    /// <summary>Around a change of level what a reading saw is not known: it is taken 28 to 62 us after it is due.</summary>
    private const double LevelGuardUs = 100;
    private const int DigitsInReading = 6;
    private readonly List<(long Tick, StickReading Reading)> readings = [];
    private readonly List<(long Tick, bool Kept, double Angle)> steps = [];
    private readonly List<(long Tick, double Level)> levels = [];
    private long newest;
    private long lost;
    private (long Total, long Lost)? end;

    public List<string> Events { get; } = [];

    public List<RefusedItem> Refused { get; } = [];

    /// <summary>Readings that came.</summary>
    public long Readings => readings.Count;

    /// <summary>Whether the rig's own count at the end agrees with what came and what is known to be missing; null where it did not say.</summary>
    public bool? Reconciled => end is { } said ? said.Total >= newest && said.Lost <= said.Total - Readings : null;

    public void Take(string line, int number)
    {
        var parts = line.Split(' ');
        var good = parts[0] switch
        {
            "r" => parts.Length == 5 && TakeReadings(parts),
            "s" => parts.Length == 4 && TakeStep(parts),
            "v" => parts.Length == 3 && TakeLevel(parts),
            "d" => parts.Length == 3 && TakeEnd(parts),
            "e" => TakeEvent(line),
            _ => false,
        };
        if (!good)
        {
            Refuse(number, "not a line of a recording");
        }
    }

    public void Refuse(int line, string reason) => Refused.Add(new RefusedItem(Invariant($"line {line}"), reason));

    /// <summary>What is missing, in words.</summary>
    public IEnumerable<string> Missing()
    {
        var missing = Math.Max(end?.Total ?? newest, newest) - Readings;
        var inRig = Math.Max(end?.Lost ?? lost, lost);
        if (missing > 0)
        {
            yield return Invariant($"{missing} readings are missing: {Math.Min(inRig, missing)} found no room in the rig, {Math.Max(missing - inRig, 0)} were in frames that did not come well");
        }

        if (end is null)
        {
            yield return "the rig did not say that the stream was over: what came before is kept";
        }
    }

    /// <summary>The readings of the steps that are part of the procedure, with what was known of the true position.</summary>
    public StickSamples Samples()
    {
        var kept = readings.Where(reading => StepAt(reading.Tick) is { Kept: true }).ToList();
        var origin = kept.Count == 0 ? 0 : kept[0].Tick;
        double[]? stimulus = levels.Count > 0 ? [.. kept.Select(reading => LevelAt(reading.Tick))]
            : steps.Exists(step => !double.IsNaN(step.Angle)) ? [.. kept.Select(reading => StepAt(reading.Tick)!.Value.Angle)]
            : null;
        return new StickSamples(
            [.. kept.Select(reading => reading.Tick - origin)],
            [.. kept.Select(reading => (double)reading.Reading.X)],
            [.. kept.Select(reading => (double)(header.YIsDown ? StickReading.Greatest - reading.Reading.Y : reading.Reading.Y))],
            stimulus,
            levels.Count > 0 ? [.. Enumerable.Repeat(double.NaN, kept.Count)] : null);
    }

    private bool TakeReadings(string[] parts)
    {
        if (!Number(parts[1], out var first) || !Number(parts[2], out var tick) || !Number(parts[3], out var lostSoFar) || parts[4].Length % DigitsInReading != 0
            || first <= newest || (readings.Count > 0 && tick <= readings[^1].Tick))
        {
            return false;
        }

        var found = new List<StickReading>();
        for (var at = 0; at < parts[4].Length; at += DigitsInReading)
        {
            if (!int.TryParse(parts[4].AsSpan(at, DigitsInReading), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var pair))
            {
                return false;
            }

            found.Add(new StickReading((ushort)(pair >> 12), (ushort)(pair & 0xfff)));
        }

        var interval = header.IntervalUs * (double)header.TickHz / 1_000_000;
        readings.AddRange(found.Select((reading, index) => (tick + (long)Math.Round(index * interval), reading)));
        (newest, lost) = (first + found.Count - 1, lostSoFar);
        return true;
    }

    private bool TakeStep(string[] parts)
    {
        if (!Number(parts[1], out var tick) || parts[2] is not ("0" or "1"))
        {
            return false;
        }

        var angle = double.NaN;
        if (parts[3] != "-" && !double.TryParse(parts[3], NumberStyles.Float, CultureInfo.InvariantCulture, out angle))
        {
            return false;
        }

        steps.Add((tick, parts[2] == "1", angle));
        return true;
    }

    private bool TakeLevel(string[] parts)
    {
        if (!Number(parts[1], out var tick) || !Number(parts[2], out var level) || level > ushort.MaxValue)
        {
            return false;
        }

        levels.Add((tick, level / (double)ushort.MaxValue));
        return true;
    }

    private bool TakeEnd(string[] parts)
    {
        if (!Number(parts[1], out var total) || !Number(parts[2], out var lostInAll))
        {
            return false;
        }

        end = (total, lostInAll);
        return true;
    }

    private bool TakeEvent(string line)
    {
        Events.Add(line[Math.Min(2, line.Length)..]);
        return true;
    }

    private (long Tick, bool Kept, double Angle)? StepAt(long tick) =>
        steps.FindLastIndex(step => step.Tick <= tick) is var index && index >= 0 ? steps[index] : null;

    private double LevelAt(long tick)
    {
        var guard = LevelGuardUs * header.TickHz / 1e6;
        var index = levels.FindLastIndex(level => level.Tick <= tick + guard);
        return index < 0 || tick - levels[index].Tick < guard ? double.NaN : levels[index].Level;
    }

    private static bool Number(string text, out long number) => long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
