using Tarry.Studies.Reports;
using Tarry.Studies.Trials;

namespace Tarry.Imports.PacketCapture;

/// <summary>Latencies from a capture in which one device marks the presses and another answers.</summary>
/// <remarks>
/// A press is a report of the marker (or one in which its field goes from 0 to something else); its answer is the first report of the device, not
/// before it, in which the button does the same (or anything changes), within the time-out and before the next press. No answer: missed.
/// </remarks>
internal static class MarkedPresses
{
    /// <summary>The times at which something happens: a report whose field goes up, or, without a field, each report or each change.</summary>
    /// <param name="log">The device's reports.</param>
    /// <param name="wanted">Whether the reports of an endpoint are the device's.</param>
    /// <param name="field">The field; null for none.</param>
    /// <param name="endpoints">The endpoints, for the ids of reports.</param>
    /// <param name="everyReport">Without a field: every report counts, else those that differ from the one before from the same endpoint.</param>
    public static List<long> Events(
        ReportLog log, Func<int, bool> wanted, ReportField? field, IReadOnlyDictionary<int, ReportEndpoint> endpoints, bool everyReport)
    {
        var events = new List<long>();
        var before = new Dictionary<int, int>();
        var up = false;
        foreach (var index in InOrder(log))
        {
            var endpoint = log.Endpoint(index);
            if (!wanted(endpoint))
            {
                continue;
            }

            var data = log.Data(index);
            if (field is null)
            {
                if (everyReport || !before.TryGetValue(endpoint, out var last) || !log.Data(last).SequenceEqual(data))
                {
                    events.Add(log.Tick(index));
                }

                before[endpoint] = index;
            }
            else if (field.Endpoint == endpoint && endpoints[endpoint].ReportIdOf(data) == field.ReportId)
            {
                var now = field.ValueIn(data) is not (null or 0);
                if (now && !up)
                {
                    events.Add(log.Tick(index));
                }

                up = now;
            }
        }

        return events;
    }

    /// <summary>One trial a press.</summary>
    /// <param name="presses">Times of presses, ascending, in nanoseconds.</param>
    /// <param name="answers">Times of answers, ascending.</param>
    /// <param name="timeOut">The longest wait, in nanoseconds.</param>
    /// <param name="tick">From nanoseconds to ticks of the session.</param>
    public static List<Trial> Trials(IReadOnlyList<long> presses, IReadOnlyList<long> answers, long timeOut, Func<long, long> tick)
    {
        const int MostEdges = 255;
        var trials = new List<Trial>(presses.Count);
        var answer = 0;
        for (var press = 0; press < presses.Count; press++)
        {
            var at = presses[press];
            var end = press + 1 < presses.Count ? Math.Min(at + timeOut, presses[press + 1] - 1) : at + timeOut;
            var stray = false;
            for (; answer < answers.Count && answers[answer] < at; answer++)
            {
                stray = true;
            }

            var first = answer;
            for (; answer < answers.Count && answers[answer] <= end; answer++)
            {
            }

            var edges = answer - first;
            var flags = (stray ? TrialFlags.StrayEdgeBefore : 0) | (edges > 1 ? TrialFlags.Bounced : 0);
            trials.Add(new Trial(
                press + 1,
                0,
                tick(at),
                edges > 0 ? tick(answers[first]) - tick(at) : null,
                null,
                edges > 0 ? Outcome.Response : Outcome.Missed,
                flags,
                Math.Min(edges, MostEdges)));
        }

        return trials;
    }

    private static IEnumerable<int> InOrder(ReportLog log)
    {
        var all = Enumerable.Range(0, log.Count);
        return log.IsInOrder ? all : all.OrderBy(log.Tick);
    }
}
