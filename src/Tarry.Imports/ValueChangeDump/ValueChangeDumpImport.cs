using System.Globalization;
using Tarry.Imports.Recordings;
using Tarry.Statistics.Edges;

namespace Tarry.Imports.ValueChangeDump;

/// <summary>Reads a value change dump (IEEE 1364, clause 18; from memory) of a contact and a response. See <c>docs/formats/value-change-dump.md</c>.</summary>
public static class ValueChangeDumpImport
{
    /// <summary>The name of the format in records of imports.</summary>
    public const string Format = "value-change-dump";

    private const string Remedy = "Check the channels, --press-edge and --response-edge, and with --dry-run --explain what was read.";

    /// <summary>Reads a file completely and says what it would add to a study; nothing is written.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">The channels and how to pair them.</param>
    /// <param name="target">What the recording is taken in as.</param>
    /// <param name="progress">Told about every million words.</param>
    /// <param name="cancellation">Stops the reading; nothing is left behind.</param>
    /// <remarks>One pass in little memory and some 100 bytes a press. Where the file is damaged reading stops, and what came before is kept.</remarks>
    /// <exception cref="ImportException">The file is no dump, has no such channel, or nothing of it could be kept.</exception>
    /// <exception cref="ArgumentException">The options contradict each other.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static ImportPlan Read(
        string path, ValueChangeDumpOptions options, RecordingTarget target, IProgress<ImportProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(target);
        options.Window.Require();
        var fileName = Path.GetFileName(path);
        using var file = RecordingFile.Open(path);
        try
        {
            return Read(file, fileName, options, target, count =>
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report(new ImportProgress(fileName, file.Position, file.Length, count));
            });
        }
        catch (DamagedRecordingException damaged)
        {
            throw new ImportException(
                damaged.Message, FormattableString.Invariant($"{fileName} byte {damaged.Damage.Offset}"), "Give a value change dump, as logic analysers export it ('VCD').", damaged);
        }
        catch (IOException failure)
        {
            throw new ImportException($"Reading stopped: {failure.Message}", fileName, "Check the disk or the connection and import again.", failure);
        }
    }

    private static ImportPlan Read(HashedFile file, string fileName, ValueChangeDumpOptions options, RecordingTarget target, Action<long> progress)
    {
        var tokens = new TokenScanner(file);
        var header = DumpHeader.Read(tokens);
        var press = ChannelSelection.Find(header.Nets, options.PressChannel, options.PressThreshold, "--press-channel", fileName);
        var response = ChannelSelection.Find(header.Nets, options.ResponseChannel, options.ResponseThreshold, "--response-channel", fileName);
        if ((press.Net, press.Place, press.Threshold) == (response.Net, response.Place, response.Threshold) && options.PressEdge == options.ResponseEdge)
        {
            throw new ImportException($"The press and the response are the same edge of the channel {press.Net.Path}.", fileName, "Name two channels, or two edges of one.");
        }

        var plan = new RecordingPlan(target, fileName, Format);
        var unitsASecond = (double)header.TickHz / header.TicksPerUnit;
        var (shortest, longest) = options.Window.Ticks(unitsASecond);
        var trials = new PairedTrials(plan, fileName, header.TickHz, units => units * header.TicksPerUnit);
        var pairer = new EdgePairer(shortest, longest, trials.Add);
        var contact = new EdgeFilter(options.PressEdge, (long)Math.Round(options.DebounceMs * unitsASecond / 1000));
        var answer = new EdgeFilter(options.ResponseEdge, 0);
        var changes = new ChangeReader(tokens, [press, response]);
        try
        {
            changes.Read(Step, progress);
        }
        catch (DamagedRecordingException damaged)
        {
            plan.StopAt(damaged.Damage);
            RecordingFile.ReadToEnd(file);
        }

        pairer.End(changes.Time);
        Describe(plan, options, header, press, response);
        Say(plan, contact, answer, changes);
        return plan.Build(file.Sha256, header.TickHz, Remedy);

        void Step(long time, ReadOnlySpan<SignalLevel> levels)
        {
            var wasActive = answer.Active;
            var losses = answer.Losses;
            var answered = answer.Take(time, levels[1]);
            if (contact.Take(time, levels[0]))
            {
                pairer.Press(time, wasActive);
            }

            if (answered)
            {
                pairer.Response(time);
            }
            else if (answer.Losses > losses)
            {
                pairer.Lose(time);
            }
        }
    }

    private static void Describe(RecordingPlan plan, ValueChangeDumpOptions options, DumpHeader header, ChannelSelection press, ChannelSelection response)
    {
        plan.Options["press_channel"] = press.Net.Path;
        plan.Options["response_channel"] = response.Net.Path;
        if (press.Net.Width > 1)
        {
            plan.Options["press_bit_from_right"] = press.Place.ToString(CultureInfo.InvariantCulture);
        }

        if (response.Net.Width > 1)
        {
            plan.Options["response_bit_from_right"] = response.Place.ToString(CultureInfo.InvariantCulture);
        }

        plan.Options["press_edge"] = Text(options.PressEdge);
        plan.Options["response_edge"] = Text(options.ResponseEdge);
        plan.Options["debounce_ms"] = options.DebounceMs.ToString(CultureInfo.InvariantCulture);
        plan.Options["min_latency_ms"] = options.Window.ShortestMs.ToString(CultureInfo.InvariantCulture);
        plan.Options["max_latency_ms"] = options.Window.LongestMs.ToString(CultureInfo.InvariantCulture);
        if (press.Net.IsReal)
        {
            plan.Options["press_threshold"] = press.Threshold.ToString(CultureInfo.InvariantCulture);
        }

        if (response.Net.IsReal)
        {
            plan.Options["response_threshold"] = response.Threshold.ToString(CultureInfo.InvariantCulture);
        }

        plan.Note(FormattableString.Invariant($"{header.Nets.Count} channels: {string.Join(", ", header.Nets.Take(20).Select(net => net.Path))}; {header.TickHz} ticks a second"));
    }

    private static void Say(RecordingPlan plan, EdgeFilter contact, EdgeFilter answer, ChangeReader changes)
    {
        if (contact.Bounces > 0)
        {
            plan.Event(FormattableString.Invariant($"{contact.Bounces} edges of the press channel were taken for bounces"));
        }

        if (changes.Suspensions > 0)
        {
            plan.Event(FormattableString.Invariant($"dumping was switched off {changes.Suspensions} times; what happened then is not known"));
        }

        if (contact.Losses > 0 || answer.Losses > 0)
        {
            plan.Event(FormattableString.Invariant($"the press channel became unknown {contact.Losses} times, the response channel {answer.Losses} times; presses in between are not known"));
        }
    }

    private static string Text(SignalEdge edge) => edge switch { SignalEdge.Rising => "rising", SignalEdge.Falling => "falling", _ => "any" };
}
