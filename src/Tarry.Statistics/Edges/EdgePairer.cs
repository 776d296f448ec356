namespace Tarry.Statistics.Edges;

/// <summary>Pairs presses with response edges as they come, in order of time, and guesses nothing.</summary>
/// <remarks>
/// A response edge belongs to the one unanswered press of which it lies between the shortest and the longest latency. Where
/// that holds for two presses or more, none of them is paired: all are ambiguous. An edge that only a press younger than the
/// shortest latency could claim makes that press early. Later edges up to the next press count as further edges of the
/// answered press. What fits no press is a stray edge before the next. Common practice, no published source.
/// Memory holds the presses whose latency is still open.
/// </remarks>
public sealed class EdgePairer
{
    private readonly long shortest;
    private readonly long longest;
    private readonly Action<EdgePair> found;
    private readonly List<Open> open = [];
    private bool stray;

    /// <summary>A pairer.</summary>
    /// <param name="shortest">The shortest latency that is physically possible, in ticks, 0 or more.</param>
    /// <param name="longest">The longest latency to wait for, in ticks, more than the shortest.</param>
    /// <param name="found">Told of every press in order, once.</param>
    /// <exception cref="ArgumentOutOfRangeException">The latencies are not in order.</exception>
    public EdgePairer(long shortest, long longest, Action<EdgePair> found)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(shortest);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(longest, shortest);
        ArgumentNullException.ThrowIfNull(found);
        (this.shortest, this.longest, this.found) = (shortest, longest, found);
    }

    /// <summary>A press.</summary>
    /// <param name="time">When, in ticks; not before anything told so far.</param>
    /// <param name="active">Whether the response signal is active already.</param>
    public void Press(long time, bool active)
    {
        CloseBefore(time);
        while (open.Count > 0 && open[0].Outcome is not null)
        {
            Close();
        }

        open.Add(new Open { Press = time, Active = active, Stray = stray });
        stray = false;
    }

    /// <summary>A response edge.</summary>
    /// <param name="time">When, in ticks; not before anything told so far.</param>
    public void Response(long time)
    {
        CloseBefore(time);
        var candidates = open.Where(press => press.Outcome is null && time - press.Press >= shortest).ToList();
        if (candidates.Count == 1)
        {
            candidates[0].Answer(time, EdgePairOutcome.Answered);
        }
        else if (candidates.Count > 1)
        {
            candidates.ForEach(press => press.Answer(null, EdgePairOutcome.Ambiguous));
        }
        else if (open.FindLast(press => press.Outcome is null) is { } tooYoung)
        {
            tooYoung.Answer(time, EdgePairOutcome.Early);
        }
        else if (open.Count > 0)
        {
            open[^1].Edges++;
        }
        else
        {
            stray = true;
        }
    }

    /// <summary>The response signal is unknown from here on: what still waits for it cannot be told.</summary>
    /// <param name="time">When, in ticks.</param>
    public void Lose(long time) => GiveUp(time, EdgePairOutcome.SignalLost);

    /// <summary>The recording ends.</summary>
    /// <param name="time">When, in ticks.</param>
    public void End(long time)
    {
        GiveUp(time, EdgePairOutcome.RecordingEnded);
        while (open.Count > 0)
        {
            Close();
        }
    }

    private void GiveUp(long time, EdgePairOutcome outcome)
    {
        CloseBefore(time);
        foreach (var press in open.Where(press => press.Outcome is null))
        {
            press.Answer(null, outcome);
        }
    }

    private void CloseBefore(long time)
    {
        while (open.Count > 0 && time - open[0].Press > longest)
        {
            open[0].Outcome ??= EdgePairOutcome.Missed;
            Close();
        }
    }

    private void Close()
    {
        var press = open[0];
        open.RemoveAt(0);
        found(new EdgePair(press.Press, press.Response, press.Outcome!.Value, press.Edges, press.Active, press.Stray));
    }

    private sealed class Open
    {
        public required long Press { get; init; }

        public required bool Active { get; init; }

        public required bool Stray { get; init; }

        public long? Response { get; private set; }

        public EdgePairOutcome? Outcome { get; set; }

        public int Edges { get; set; }

        public void Answer(long? time, EdgePairOutcome outcome)
        {
            (Response, Outcome) = (time, outcome);
            Edges += outcome is EdgePairOutcome.Answered or EdgePairOutcome.Early or EdgePairOutcome.Ambiguous ? 1 : 0;
        }
    }
}
