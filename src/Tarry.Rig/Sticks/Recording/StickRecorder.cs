using Tarry.Rig.Frames;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>Does a procedure with the rig: its readings go to a recording as they come, and the steps go by the readings' own ticks.</summary>
/// <param name="source">Where the rig is.</param>
/// <param name="request">What is recorded.</param>
/// <param name="progress">Told where it stands.</param>
public sealed class StickRecorder(IRigPortSource source, StickRecordingRequest request, IProgress<StickProgress>? progress = null)
{
    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan EndLimit = TimeSpan.FromSeconds(2);
    private readonly StickGuide guide = request.Guide;
    private readonly IReadOnlyList<StickPrompt> prompts = request.Guide.Prompts;
    private readonly List<double> starts = request.Guide.Steps.Aggregate(new List<double> { 0 }, (sums, one) => [.. sums, sums[^1] + one.Seconds]);
    private ulong? firstTick;
    private long readings;
    private int step = -1;

    /// <summary>Records until the steps are done, the user stops it, or the rig is lost. What came is in the file.</summary>
    /// <param name="file">The recording to begin.</param>
    /// <param name="cancellation">Stops it in good order.</param>
    /// <returns>Whether all steps were done.</returns>
    /// <exception cref="RigException">There is no rig, or its firmware knows no stream; nothing is begun.</exception>
    /// <exception cref="IOException">The file is there already, or the disk failed.</exception>
    public bool Run(string file, CancellationToken cancellation)
    {
        List<string> bad = [];
        using var connection = new RigConnection(source, result => bad.Add(result.Describe()));
        if (!connection.Open(cancellation))
        {
            return false;
        }

        var link = connection.Link;
        _ = link.Ask(HostCommand.Stop);
        Require(link, HostCommand.Set(RigParameter.ReadingInterval, request.IntervalUs));
        Require(link, HostCommand.Set(RigParameter.ReadingReference, request.AgainstSupply ? 1u : 0u));
        if (!WaitForTheHand(link, cancellation))
        {
            return false;
        }

        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
        using var recording = new RecordingFile(file, Header(connection.Rig).ToLine());
        SetLevel(link, recording, guide.Steps[0]);
        Require(link, HostCommand.Stream);
        var done = false;
        while (!done && !cancellation.IsCancellationRequested && link.State == LinkState.Alive)
        {
            if (link.Next(Moment) is ReadingsFrame frame)
            {
                done = Take(link, recording, frame, connection.Rig.TickHz);
            }

            recording.RequireSound();
        }

        End(link, recording, bad);
        return done;
    }

    /// <summary>Time to take hold of the stick; whether it was waited for to its end.</summary>
    private bool WaitForTheHand(RigLink link, CancellationToken cancellation)
    {
        var begun = source.Time.GetTimestamp();
        var left = request.ReadySeconds;
        while (left > 0 && !cancellation.IsCancellationRequested)
        {
            progress?.Report(new StickProgress(prompts, -left, 0, 0, 0));
            _ = link.Next(Moment);
            left = request.ReadySeconds - source.Time.GetElapsedTime(begun).TotalSeconds;
            if (link.State != LinkState.Alive)
            {
                throw new RigException("The rig was lost before the first step; nothing was recorded.", "Check the cable, and try again.");
            }
        }

        return !cancellation.IsCancellationRequested;
    }

    private bool Take(RigLink link, RecordingFile recording, ReadingsFrame frame, long tickHz)
    {
        firstTick ??= frame.Ticks;
        readings += frame.Readings.Count;
        Note(recording, frame);
        var seconds = (frame.Ticks - firstTick.Value) / (double)tickHz;
        while (step + 1 < guide.Steps.Count && seconds >= starts[step + 1])
        {
            step++;
            var one = guide.Steps[step];
            var begins = firstTick.Value + (ulong)(starts[step] * tickHz);
            recording.AddLine(Invariant($"s {begins} {(one.Kept ? 1 : 0)} {(one.AngleDeg is { } angle ? Invariant($"{angle}") : "-")}"));
            if (step > 0)
            {
                SetLevel(link, recording, one);
            }
        }

        var (x, y) = Position(frame.Readings[^1]);
        progress?.Report(new StickProgress(prompts, seconds, readings, x, y));
        if (seconds < starts[^1])
        {
            return false;
        }

        // What still comes until the rig has stopped is of no step.
        recording.AddLine(Invariant($"s {firstTick.Value + (ulong)(starts[^1] * tickHz)} 0 -"));
        return true;
    }

    private (double X, double Y) Position(StickReading reading)
    {
        var (x, y) = ((2.0 * reading.X / StickReading.Greatest) - 1, (2.0 * reading.Y / StickReading.Greatest) - 1);
        return (x, request.YIsDown ? -y : y);
    }

    private static void Note(RecordingFile recording, ReadingsFrame frame) => recording.AddLine(
        Invariant($"r {frame.First} {frame.Ticks} {frame.Lost} {string.Concat(frame.Readings.Select(reading => Invariant($"{reading.X:x3}{reading.Y:x3}")))}"));

    private static void SetLevel(RigLink link, RecordingFile recording, StickStep step)
    {
        if (step.LevelX is { } level && link.Ask(HostCommand.Level((ushort)Math.Round(level * ushort.MaxValue))) is LevelFrame set)
        {
            recording.AddLine(Invariant($"v {set.Ticks} {set.Level}"));
        }
    }

    private void End(RigLink link, RecordingFile recording, List<string> bad)
    {
        switch (link.State)
        {
            case LinkState.Alive:
                _ = link.Ask(HostCommand.Stop);
                TakeEnd(link, recording);
                break;
            case LinkState.Restarted:
                recording.AddEvent("the rig restarted: what came before is kept");
                break;
            default:
                recording.AddEvent("the link to the rig was lost: what came before is kept");
                break;
        }

        foreach (var frame in bad)
        {
            recording.AddEvent($"a frame came in bad: {frame}");
        }
    }

    private void TakeEnd(RigLink link, RecordingFile recording)
    {
        var asked = source.Time.GetTimestamp();
        while (link.State == LinkState.Alive && source.Time.GetElapsedTime(asked) < EndLimit)
        {
            switch (link.Next(Moment))
            {
                case ReadingsFrame frame:
                    Note(recording, frame);
                    break;
                case StreamEndFrame end:
                    recording.AddLine(Invariant($"d {end.Total} {end.Lost}"));
                    return;
            }
        }
    }

    private static void Require(RigLink link, HostCommand command)
    {
        switch (link.Ask(command))
        {
            case AckFrame:
                return;
            case RefusalFrame { Reason: RefusalReason.Key or RefusalReason.Kind }:
                throw new RigException("The rig's firmware knows no stream of readings.", "Put the firmware that came with this program on the board.");
            case RefusalFrame refusal:
                throw new RigException(Invariant($"The rig refuses '{command.Kind}{command.Fields}': {refusal.Reason}."), "End what the rig is doing, and try again.");
            default:
                throw new RigException("The rig does not answer.", "Check the cable, and try again.");
        }
    }

    private StickRecordingHeader Header(HelloFrame rig) => new()
    {
        Procedure = StickProcedures.Name(request.Procedure),
        Board = rig.Board,
        Firmware = rig.Firmware,
        BootId = rig.Boot,
        TickHz = rig.TickHz,
        IntervalUs = request.IntervalUs,
        Reference = request.AgainstSupply ? "supply" : "aref",
        YIsDown = request.YIsDown,
        StimulusUncertainty = request.StimulusUncertainty,
    };
}
