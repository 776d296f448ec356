using Tarry.Rig.Frames;

namespace Tarry.Rig.Link;

/// <summary>
/// A conversation with one rig over one port: frames in order, and one command at a time, repeated until it is answered.
/// </summary>
/// <remarks>
/// Whoever holds the link reads it; nothing runs beside. The rig holds its last 24 trials and waits for the host, and the
/// operating system holds more bytes than these make, so nothing is lost while the caller is busy. Frames that arrive
/// while a command waits for its answer are kept for <see cref="Next"/>.
/// </remarks>
public sealed class RigLink : IDisposable
{
    /// <summary>After this without an answer a command is repeated.</summary>
    public static readonly TimeSpan AnswerTime = TimeSpan.FromMilliseconds(250);

    /// <summary>After this without a good frame the link is dead: heartbeats are due every second.</summary>
    public static readonly TimeSpan SilenceLimit = TimeSpan.FromSeconds(3);

    /// <summary>After this without an answer, though the rig speaks, the link is dead the other way.</summary>
    public static readonly TimeSpan DeafLimit = TimeSpan.FromSeconds(15);

    private const int Repeats = 5;
    private readonly IRigPort port;
    private readonly TimeProvider time;
    private readonly Action<FrameResult> onBadFrame;
    private readonly FrameReader reader = new();
    private readonly Queue<RigFrame> inbox = new();
    private readonly byte[] buffer = new byte[4096];
    private long lastHeard;
    private byte number;
    private ushort pingId;
    private bool restarted;
    private long? unansweredSince;

    /// <summary>A link over a port that is open.</summary>
    /// <param name="port">The port; the link disposes of it.</param>
    /// <param name="time">The clock that the port waits on.</param>
    /// <param name="onBadFrame">Told of every bad frame, with its bytes.</param>
    public RigLink(IRigPort port, TimeProvider time, Action<FrameResult> onBadFrame)
    {
        ArgumentNullException.ThrowIfNull(time);
        this.port = port;
        this.time = time;
        this.onBadFrame = onBadFrame;
        lastHeard = time.GetTimestamp();
    }

    /// <summary>Who the rig is; null before <see cref="Greet"/> succeeded.</summary>
    public HelloFrame? Rig { get; private set; }

    /// <summary>Commands that had to be repeated.</summary>
    public int RepeatedCommands { get; private set; }

    /// <summary>Frames that came in bad.</summary>
    public long BadFrames { get; private set; }

    /// <summary>What the link knows of its rig.</summary>
    public LinkState State =>
        port.IsDead ? LinkState.Dead
        : restarted ? LinkState.Restarted
        : time.GetElapsedTime(lastHeard) > SilenceLimit ? LinkState.Silent
        : unansweredSince is { } since && time.GetElapsedTime(since) > DeafLimit ? LinkState.Deaf
        : LinkState.Alive;

    /// <summary>Asks the rig who it is until it says so; a board that resets when its port is opened takes two seconds.</summary>
    /// <returns>Who it is, or null if it did not say within the time, or the port broke.</returns>
    public HelloFrame? Greet(TimeSpan limit, CancellationToken cancellation = default)
    {
        var start = time.GetTimestamp();
        restarted = false;
        unansweredSince = null;
        Rig = null;
        while (Rig is null && !port.IsDead && !cancellation.IsCancellationRequested && time.GetElapsedTime(start) < limit)
        {
            port.Write(HostCommand.Hello.Encode(++number));
            var asked = time.GetTimestamp();
            while (Rig is null && !port.IsDead && time.GetElapsedTime(asked) < AnswerTime)
            {
                Read(AnswerTime - time.GetElapsedTime(asked));
            }
        }

        return Rig;
    }

    /// <summary>The next frame, or null if none came in the time or the link is no longer alive.</summary>
    public RigFrame? Next(TimeSpan timeout)
    {
        if (inbox.Count == 0)
        {
            Read(timeout);
        }

        return inbox.TryDequeue(out var frame) ? frame : null;
    }

    /// <summary>Sends a command until it is answered.</summary>
    /// <returns>An <see cref="AckFrame"/>, a <see cref="LevelFrame"/>, a <see cref="RefusalFrame"/>, or null: no answer to six attempts, or <see cref="State"/> says why.</returns>
    /// <remarks>What came before the answer to <c>g</c> belongs to no run of ours, and what came before that to <c>s</c> to no stream, and is dropped.</remarks>
    public RigFrame? Ask(HostCommand command)
    {
        ArgumentNullException.ThrowIfNull(command);
        number++;
        for (var attempt = 0; attempt <= Repeats && State == LinkState.Alive; attempt++)
        {
            RepeatedCommands += attempt > 0 ? 1 : 0;
            if (AskOnce(command, out _) is { } answer)
            {
                return answer;
            }
        }

        return null;
    }

    /// <summary>Pings the rig, once: a late answer to an earlier ping must not be taken for the answer to a repeat.</summary>
    /// <returns>The counter as it came and the host's window around it, or null if the answer was lost.</returns>
    public (ulong Counter, double SentSeconds, double ReceivedSeconds)? Ping()
    {
        number++;
        return AskOnce(HostCommand.Ping(++pingId), out var sent) is PingReplyFrame reply && reply.Id == pingId
            ? (reply.Ticks, Seconds(sent), Seconds(lastHeard))
            : null;
    }

    /// <summary>Tells the rig that all trials up to this one are safe on the disk.</summary>
    public void Acknowledge(uint sequence) => port.Write(HostCommand.Acknowledge(sequence));

    /// <summary>Closes the port.</summary>
    public void Dispose() => port.Dispose();

    private RigFrame? AskOnce(HostCommand command, out long sent)
    {
        sent = time.GetTimestamp();
        port.Write(command.Encode(number));
        while (State == LinkState.Alive && time.GetElapsedTime(sent) < AnswerTime)
        {
            if (Read(AnswerTime - time.GetElapsedTime(sent), command.Kind) is { } answer)
            {
                unansweredSince = null;
                return answer;
            }
        }

        unansweredSince ??= sent;
        return null;
    }

    private bool IsAnswer(RigFrame frame, char kind) => frame switch
    {
        AckFrame ack => ack.Number == number && ack.Kind == kind,
        RefusalFrame refusal => refusal.Number == number && refusal.Kind == kind,
        PingReplyFrame reply => reply.Number == number && kind == 'p',
        LevelFrame level => level.Number == number && kind == 'v',
        _ => false,
    };

    /// <summary>Reads once; puts good frames of this boot into the inbox, but for the answer looked for.</summary>
    private RigFrame? Read(TimeSpan timeout, char asked = '\0')
    {
        RigFrame? answer = null;
        var count = port.Read(buffer, timeout > TimeSpan.Zero ? timeout : TimeSpan.Zero);
        reader.Push(buffer.AsSpan(0, count), result =>
        {
            if (result.Frame is not { } frame)
            {
                BadFrames++;
                onBadFrame(result);
                return;
            }

            lastHeard = time.GetTimestamp();
            if (Rig is null || frame.Boot != Rig.Boot)
            {
                restarted = Rig is not null;
                Rig ??= frame as HelloFrame;
            }
            else if (answer is null && IsAnswer(frame, asked))
            {
                answer = frame;
                if (asked == HostCommand.Go.Kind || asked == HostCommand.Stream.Kind)
                {
                    inbox.Clear();
                }
            }
            else if (frame is not HelloFrame)
            {
                inbox.Enqueue(frame);
            }
        });
        return answer;
    }

    private double Seconds(long timestamp) => (double)timestamp / time.TimestampFrequency;
}
