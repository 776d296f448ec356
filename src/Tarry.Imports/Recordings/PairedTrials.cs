using Tarry.Statistics.Edges;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Recordings;

/// <summary>Turns pairs of edges into trials, and says why a pair is none.</summary>
/// <param name="plan">What they are added to.</param>
/// <param name="fileName">The file, for places.</param>
/// <param name="tickHz">Ticks a second.</param>
/// <param name="ticks">Ticks of a time of the recording.</param>
/// <param name="bounds">The least and greatest latency, in ticks, where it is known as an interval only.</param>
internal sealed class PairedTrials(RecordingPlan plan, string fileName, double tickHz, Func<long, long> ticks, Func<EdgePair, (long Low, long High)>? bounds = null)
{
    /// <summary>More presses than any bench makes; a channel with more is something else.</summary>
    private const int MostPresses = 2_000_000;

    /// <summary>Adds what became of a press.</summary>
    /// <exception cref="ImportException">There are more presses than a session holds.</exception>
    public void Add(EdgePair pair)
    {
        if (plan.Count == MostPresses)
        {
            throw new ImportException(
                $"The press channel has more than {MostPresses} edges.", fileName, "Check that it is the channel of the contact and not a clock or a bus, or set a longer --debounce-ms.");
        }

        var press = ticks(pair.Press);
        if (Refusal(pair.Outcome) is var (kind, reason))
        {
            plan.Refuse(press, FormattableString.Invariant($"{fileName} at {press / tickHz:0.000000} s"), kind, reason);
            return;
        }

        var flags = (pair.Edges > 1 ? TrialFlags.Bounced : TrialFlags.None)
            | (pair.ActiveAtPress ? TrialFlags.LineActiveAtPress : TrialFlags.None)
            | (pair.StrayBefore ? TrialFlags.StrayEdgeBefore : TrialFlags.None);
        var latency = pair.Response is { } response ? ticks(response) - press : default(long?);
        var high = default(long?);
        if (latency is not null && bounds is not null)
        {
            (latency, high) = bounds(pair);
        }

        plan.Add(new Trial(plan.NextSequence, 0, press, latency, high, OutcomeOf(pair.Outcome), flags, Math.Min(pair.Edges, 255)));
    }

    private static Outcome OutcomeOf(EdgePairOutcome outcome) => outcome switch
    {
        EdgePairOutcome.Answered => Outcome.Response,
        EdgePairOutcome.Early => Outcome.Early,
        _ => Outcome.Missed,
    };

    private static (string Kind, string Reason)? Refusal(EdgePairOutcome outcome) => outcome switch
    {
        EdgePairOutcome.Ambiguous => ("the response can belong to two presses", "A response came that can belong to this press or to another one; a shorter --max-latency-ms may tell them apart."),
        EdgePairOutcome.SignalLost => ("the response channel became unknown", "The response channel became unknown (x, z or not dumped) before a response."),
        EdgePairOutcome.RecordingEnded => ("the recording ended too soon", "The recording ended before a response and before the longest latency."),
        _ => null,
    };
}
