using System.Runtime.InteropServices;
using Tarry.Metrology;
using Tarry.Statistics.Censoring;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Findings.Samples;

/// <summary>Turns a stored session into a sample: applies exclusions, counts every trial once, and turns ticks into time.</summary>
/// <remarks>The latency of an axis counts from the crossing of its stated threshold.</remarks>
internal static class SessionSampler
{
    public static SessionSample Prepare(SessionData data, IReadOnlyList<Exclusion> exclusions)
    {
        var key = data.Record.Key;
        var mine = exclusions.Where(exclusion => exclusion.Session == key).ToList();
        var clocks = data.Record.Segments
            .Select(segment => new TimerClock(segment.TickHz, segment.ClockFit?.RateErrorPpm ?? 0))
            .ToArray();
        var crossings = data.Record.Segments.Select(segment => data.Record.Run?.CrossingTicks(segment.TickHz) ?? 0).ToArray();
        var longest = LongestSegment(data);
        var presses = data.Trials
            .Where(trial => trial.Segment == longest)
            .Select(trial => trial.PressTicks)
            .OfType<long>()
            .Select(press => clocks[longest].ToMicroseconds(press) / 1000);
        var latencies = new List<double>(data.Trials.Count);
        var sequences = new List<long>(data.Trials.Count);
        var bounds = new List<CensoredValue>();
        var censored = false;
        var timed = clocks.Select(_ => (Presses: new List<double>(), Latencies: new List<double>())).ToArray();
        foreach (var trial in SessionTally.Used(data, mine))
        {
            censored |= trial.LatencyHighTicks is not null;
            var bound = Milliseconds(trial, clocks[trial.Segment], crossings[trial.Segment]);
            var latency = (bound.Low + bound.High) / 2;
            bounds.Add(bound);
            latencies.Add(latency);
            sequences.Add(trial.Sequence);
            if (trial.PressTicks is { } press)
            {
                timed[trial.Segment].Presses.Add(clocks[trial.Segment].ToMicroseconds(press) / 1000);
                timed[trial.Segment].Latencies.Add(latency);
            }
        }

        var counts = SessionTally.Of(data, mine);
        return new SessionSample
        {
            Key = key,
            Record = data.Record,
            Counts = counts,
            Sealed = data.Sealed,
            Latencies = new Sample(CollectionsMarshal.AsSpan(latencies), checked((int)counts.Missed)),
            Sequences = [.. sequences],
            PressTimesMs = [.. presses],
            Timed = [.. timed.Where(segment => segment.Presses.Count > 0).Select(segment => new TimedLatencies([.. segment.Presses], [.. segment.Latencies]))],
            ResolutionMs = clocks[longest].ToMicroseconds(LatencyStep.Of(SessionTally.Used(data, mine).Select(trial => trial.LatencyTicks ?? 0))) / 1000,
            IntervalCensored = censored,
            BoundsMs = censored ? bounds : null,
            ExclusionReasons = [.. mine.Select(exclusion => exclusion.Reason).Distinct()],
        };
    }

    // Where only an interval is known its middle stands for it, and the bounds are kept beside it.
    private static CensoredValue Milliseconds(Trial trial, TimerClock clock, long crossing)
    {
        var low = clock.ToMicroseconds((trial.LatencyTicks ?? 0) - crossing) / 1000;
        return new CensoredValue(low, trial.LatencyHighTicks is { } high ? clock.ToMicroseconds(high - crossing) / 1000 : low);
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
