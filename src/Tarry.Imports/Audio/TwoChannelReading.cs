using Tarry.Imports.Recordings;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.Audio;

/// <summary>Follows both channels of a recording, and pairs what it finds once all of it is read.</summary>
internal sealed class TwoChannelReading
{
    /// <summary>Times lie between samples: they are kept in nanoseconds.</summary>
    public const long TickHz = 1_000_000_000;

    private const int MostPictures = 200;

    /// <summary>The same change of light, found from two presses, is one.</summary>
    private const double SameSeconds = 0.0005;
    private readonly TwoChannelOptions options;
    private readonly RecordingPlan plan;
    private readonly string fileName;
    private readonly double hz;
    private readonly ClickChannel presses;
    private readonly ClickChannel? clicks;
    private readonly LightResponses? lights;
    private readonly SampleHistory pressHistory;
    private readonly List<(LightStep Step, bool IsCut)> answers = [];
    private readonly Queue<DetectedClick> unanswered = new();
    private int handedOver;
    private int pictures;

    public TwoChannelReading(WaveFormat format, TwoChannelOptions options, RecordingPlan plan, string fileName)
    {
        (this.options, this.plan, this.fileName, hz) = (options, plan, fileName, format.SampleRate);
        presses = new ClickChannel(hz, options.DebounceMs / 1000);
        lights = options.Response == SignalKind.Light ? new LightResponses(hz, options) : null;
        clicks = options.Response == SignalKind.Click ? new ClickChannel(hz, 0.005) : null;
        pressHistory = new SampleHistory(options.Pictures is null ? 0 : lights?.Kept ?? 0);
    }

    /// <summary>Follows the press channel over a block.</summary>
    /// <returns>The presses that were found in it.</returns>
    /// <exception cref="ImportException">There are more than can be presses.</exception>
    public IReadOnlyList<DetectedClick> TakePress(ReadOnlySpan<float> press)
    {
        presses.Take(press);
        Require(presses);
        return NewPresses();
    }

    /// <summary>Follows the response channel over a block, whose presses are known by then, and answers those that can be; a thread of its own may do so.</summary>
    /// <exception cref="ImportException">There are more clicks than can be responses.</exception>
    public void TakeResponse(ReadOnlySpan<float> press, ReadOnlySpan<float> response, IReadOnlyList<DetectedClick> newPresses)
    {
        if (clicks is not null)
        {
            clicks.Take(response);
            Require(clicks);
        }

        if (options.Pictures is not null)
        {
            pressHistory.Append(press);
        }

        lights?.Take(response);
        Ask(newPresses);
        while (lights is not null && unanswered.TryPeek(out var click) && lights.CanAnswer(click.Sample))
        {
            Answer(lights, unanswered.Dequeue(), ended: false);
        }
    }

    /// <summary>The recording ends: everything is paired and becomes trials.</summary>
    public void End()
    {
        presses.End();
        clicks?.End();
        Ask(NewPresses());
        while (lights is not null && unanswered.TryDequeue(out var click))
        {
            Answer(lights, click, ended: true);
        }

        Pair();
        Say();
    }

    private List<DetectedClick> NewPresses()
    {
        var found = presses.Clicks[handedOver..];
        handedOver = presses.Clicks.Count;
        return found;
    }

    private void Ask(IReadOnlyList<DetectedClick> newPresses)
    {
        foreach (var press in lights is null ? [] : newPresses)
        {
            unanswered.Enqueue(press);
        }
    }

    private void Require(ClickChannel channel)
    {
        if (channel.IsOverfull)
        {
            throw new ImportException("A channel holds more clicks than a session has presses.", fileName, "Check which channel is the press, and whether the recording is only noise.");
        }
    }

    private void Answer(LightResponses of, DetectedClick click, bool ended)
    {
        var answer = of.Answer(click.Sample, ended);
        answers.Add(answer);
        if (Doubt(click, answer) is var (_, reason))
        {
            Draw(click, reason);
        }
    }

    private void Pair()
    {
        var index = 0;
        var end = 0L;
        var trials = new PairedTrials(plan, fileName, TickHz, nanoseconds => nanoseconds);
        var (shortest, longest) = options.Window.Ticks(TickHz);
        var pairer = new EdgePairer(shortest, longest, pair =>
        {
            var at = index++;
            if (Doubt(presses.Clicks[at], lights is null ? null : answers[at]) is var (kind, reason))
            {
                plan.Refuse(pair.Press, FormattableString.Invariant($"{fileName} at {pair.Press / (double)TickHz:0.000000} s"), kind, reason);
            }
            else
            {
                trials.Add(pair with { Edges = lights is null ? pair.Edges : Math.Max(pair.Edges, answers[at].Step.Edges) });
            }
        });
        foreach (var (time, isPress) in presses.Clicks.Select(click => (Ticks(click.Onset), true)).Concat(Responses().Select(response => (Ticks(response), false))).OrderBy(change => change.Item1))
        {
            if (isPress)
            {
                pairer.Press(time, active: false);
            }
            else
            {
                pairer.Response(time);
            }

            end = time;
        }

        // A press whose window the recording's end cuts is told by its search; the pairer sees whole windows only.
        pairer.End(lights is null ? end : end + longest + 1);
    }

    private IEnumerable<double> Responses()
    {
        if (clicks is not null)
        {
            return clicks.Clicks.Where(click => click.IsSure).Select(click => click.Onset);
        }

        var found = answers.Where(answer => answer.Step.Kind == LightStepKind.Found).Select(answer => answer.Step.Sample).Order().ToList();
        return found.Where((sample, index) => index == 0 || sample - found[index - 1] > SameSeconds * hz);
    }

    private static (string Kind, string Reason)? Doubt(DetectedClick click, (LightStep Step, bool IsCut)? answer) => (click.IsSure, answer) switch
    {
        (false, _) => ("a click too weak to be sure", "What may be a click hardly stands out of the noise."),
        (_, { IsCut: true }) => ("the recording ended too soon", "The recording ended before a response and before the longest latency."),
        (_, { Step.Kind: LightStepKind.Weak }) => ("a change of light too weak to be sure", "What may be the response hardly stands out of the noise."),
        (_, { Step.Kind: LightStepKind.Several }) => ("several changes of light", "A smaller change of light comes before a larger one; which is the response cannot be told."),
        (_, { Step.Kind: LightStepKind.Unsteady }) => ("the light was not steady", "The light was not steady before it changed."),
        (_, { Step.Kind: LightStepKind.TooShort }) => ("the light did not stay", "The light did not stay for 25 ms, so that how bright it became is not known."),
        _ => null,
    };

    private void Draw(DetectedClick click, string reason)
    {
        if (options.Pictures is not { } folder || pictures == MostPictures)
        {
            return;
        }

        pictures++;
        Directory.CreateDirectory(folder);
        var from = Math.Max(pressHistory.First, (long)(click.Sample - (LightStepFinder.Before * hz)));
        var to = (long)click.Sample + lights!.Reach;
        var title = FormattableString.Invariant($"{fileName}, press at {click.Sample / hz:0.0000} s: {reason}");
        File.WriteAllText(
            Path.Combine(folder, FormattableString.Invariant($"{Path.GetFileNameWithoutExtension(fileName)}-{click.Sample / hz:0.0000}s.svg")),
            DoubtfulPicture.Of(title, pressHistory.Between(from, to), lights.Between(from, to), hz, click.Sample - from));
    }

    private void Say()
    {
        plan.Note(presses.UsesTemplate
            ? FormattableString.Invariant($"{presses.Clicks.Count} clicks, alike, timed by their mean form")
            : FormattableString.Invariant($"{presses.Clicks.Count} clicks, each timed by itself"));
        if (lights?.ModulationSeconds is { } period)
        {
            plan.Note(FormattableString.Invariant($"the light is modulated with a period of {1e6 * period:0.0} us, which is averaged out; where it matters, add up to half of it to the uncertainty"));
        }

        if (pictures > 0)
        {
            plan.Note(FormattableString.Invariant($"{pictures} pictures of doubtful pairings are in {options.Pictures}"));
        }
    }

    private long Ticks(double sample) => (long)Math.Round(Math.Max(0, sample) / hz * TickHz);
}
