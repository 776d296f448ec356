using System.Runtime.InteropServices;
using Tarry.Metrology;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Findings.Samples;

/// <summary>Turns a stored session into a sample: applies exclusions, counts every trial once, and turns ticks into time.</summary>
internal static class SessionSampler
{
    public static SessionSample Prepare(SessionData data, IReadOnlyList<Exclusion> exclusions)
    {
        var key = data.Record.Key;
        var mine = exclusions.Where(exclusion => exclusion.Session == key).ToList();
        var clocks = data.Record.Segments
            .Select(segment => new TimerClock(segment.TickHz, segment.ClockFit?.RateErrorPpm ?? 0))
            .ToArray();
        var latencies = new List<double>(data.Trials.Count);
        var sequences = new List<long>(data.Trials.Count);
        var longest = LongestSegment(data);
        var presses = new List<double>();
        long used = 0, missed = 0, early = 0, refused = 0, excluded = 0;
        var censored = false;
        foreach (var trial in data.Trials)
        {
            if (trial.Segment == longest && trial.PressTicks is { } press)
            {
                presses.Add(clocks[longest].ToMicroseconds(press) / 1000);
            }

            if (mine.Any(exclusion => Covers(exclusion, trial.Sequence)))
            {
                excluded++;
                continue;
            }

            switch (trial.Outcome)
            {
                case Outcome.Response:
                    used++;
                    censored |= trial.LatencyHighTicks is not null;
                    latencies.Add(Milliseconds(trial, clocks[trial.Segment]));
                    sequences.Add(trial.Sequence);
                    break;
                case Outcome.Missed:
                    missed++;
                    break;
                case Outcome.Early:
                    early++;
                    break;
                default:
                    refused++;
                    break;
            }
        }

        return new SessionSample
        {
            Key = key,
            Record = data.Record,
            Counts = new SessionCounts(used, missed, early, refused, excluded),
            Latencies = new Sample(CollectionsMarshal.AsSpan(latencies), checked((int)missed)),
            Sequences = [.. sequences],
            PressTimesMs = [.. presses],
            IntervalCensored = censored,
            ExclusionReasons = [.. mine.Select(exclusion => exclusion.Reason).Distinct()],
        };
    }

    private static bool Covers(Exclusion exclusion, long sequence) =>
        sequence >= (exclusion.FirstSequence ?? long.MinValue) && sequence <= (exclusion.LastSequence ?? long.MaxValue);

    // Where only an interval is known its middle stands for it, and the caution says so.
    private static double Milliseconds(Trial trial, TimerClock clock)
    {
        var low = clock.ToMicroseconds(trial.LatencyTicks ?? 0);
        var value = trial.LatencyHighTicks is { } high ? (low + clock.ToMicroseconds(high)) / 2 : low;
        return value / 1000;
    }

    private static int LongestSegment(SessionData data)
    {
        var sizes = new int[data.Record.Segments.Count];
        foreach (var trial in data.Trials)
        {
            sizes[trial.Segment]++;
        }

        return Array.IndexOf(sizes, sizes.Max());
    }
}
