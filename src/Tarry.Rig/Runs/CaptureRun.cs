using Tarry.Rig.Frames;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Rig.Runs;

/// <summary>
/// A live run, from the first command to the sealed session: what <c>tarry run</c> and the bench page drive.
/// </summary>
/// <remarks>
/// A trial counts as captured when it is on the disk. Cancelling stops the rig, takes the trial in flight and leaves the
/// journal; the same request goes on with it later, also after a crash, and fetches what a rig that kept its power still
/// holds. A rig that restarts costs the trials that it had not yet sent, and begins a new segment. All on the caller's thread.
/// </remarks>
public sealed class CaptureRun
{
    private readonly Study study;
    private readonly StudyLock held;
    private readonly RunRequest request;
    private readonly IRigPortSource source;
    private readonly IProgress<RunProgress>? progress;
    private readonly HostEcho? echo;
    private readonly LatencyCounts? latencies;

    /// <summary>A run that has not begun.</summary>
    /// <param name="study">Where the session goes; its condition must be declared.</param>
    /// <param name="held">The right to write to it.</param>
    /// <param name="request">What to capture.</param>
    /// <param name="source">Where the rig is.</param>
    /// <param name="progress">Told about ten times a second where the run stands, on the caller's thread unless it says otherwise.</param>
    /// <param name="echo">What answers the presses where the response is an echo; it begins and ends with the run, and cannot be used again.</param>
    /// <param name="latencies">Takes every latency as it is recorded, those of before too where the session goes on; null for nobody.</param>
    /// <exception cref="RunSettingsException">The request cannot be done, or its session is sealed or was begun with other settings.</exception>
    /// <exception cref="StudyException">The session's journal cannot be read.</exception>
    public CaptureRun(Study study, StudyLock held, RunRequest request, IRigPortSource source, IProgress<RunProgress>? progress = null, HostEcho? echo = null, LatencyCounts? latencies = null)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(source);
        RunParameters.Check(request);
        if (request.Settings.Response == "echo" != echo is not null)
        {
            throw new RunSettingsException(
                echo is null ? "The response is an echo, and no input device of the host is given that would set it off." : "An input device is to be echoed, and the response is not an echo.",
                "Say both: --response echo --echo-device DEVICE; 'tarry host devices' lists them.");
        }

        RequireSame(study, request);
        this.study = study;
        this.held = held;
        this.request = request;
        this.source = source;
        this.progress = progress;
        this.echo = echo;
        this.latencies = latencies;
    }

    /// <summary>Captures until the target is reached, and seals; or until cancelled, and leaves the journal.</summary>
    /// <exception cref="RigException">The rig failed; the journal is left with all that was captured.</exception>
    /// <exception cref="StudyException">The study or the disk failed; what was safe stays safe.</exception>
    public RunResult Run(CancellationToken cancellation = default)
    {
        var badFrames = new BadFrameLog();
        using var connection = new RigConnection(echo is null ? source : new EchoingPortSource(source, echo), badFrames.Add);
        var live = new LiveRun(request, connection, source.Time, progress, echo);
        using var resumed = Resume();
        if (resumed is not null && live.IsReached(resumed))
        {
            return live.Seal(resumed);
        }

        if (!live.Connect(cancellation))
        {
            return live.Stopped(resumed);
        }

        using var ledger = resumed ?? new RunLedger(study.Begin(held, FirstRecord(connection.Rig)), isNew: true, latencies);
        badFrames.WriteTo(ledger);
        return live.Capture(ledger, cancellation);
    }

    /// <summary>Goes on with a journal that is there.</summary>
    private RunLedger? Resume() =>
        study.SessionKeys.Contains(request.Key) ? new RunLedger(study.Resume(held, request.Key), isNew: false, latencies) : null;

    /// <summary>A session that is there must be open, and of the same settings.</summary>
    private static void RequireSame(Study study, RunRequest request)
    {
        if (!study.SessionKeys.Contains(request.Key))
        {
            return;
        }

        if (study.IsSealed(request.Key))
        {
            throw new RunSettingsException(
                $"The session {request.Key} is sealed.",
                "Capture into another sitting; what is sealed never changes.");
        }

        if (study.Read(request.Key).Record.Run != request.Settings)
        {
            throw new RunSettingsException(
                $"The session {request.Key} was begun with other settings.",
                "Go on with the same interval, hold, time-out, re-arm, response, actuation and seed, or capture into another sitting.");
        }
    }

    private SessionRecord FirstRecord(HelloFrame rig) => new()
    {
        Key = request.Key,
        Segments = [new Segment(rig.Boot, 1, rig.TickHz, null)],
        Board = rig.Board,
        Firmware = rig.Firmware,
        Host = request.Bench.Host,
        Application = request.Bench.Application,
        FrameCapHz = request.Bench.FrameCapHz,
        RefreshHz = request.Bench.RefreshHz,
        Battery = request.Bench.Battery,
        RoomNotes = request.Bench.RoomNotes,
        Run = request.Settings,
        Calibration = study.Calibrations
            .LastOrDefault(entry => entry.Calibration.HoldsFor(rig.Board, rig.Firmware, rig.TickHz, request.Settings.Response, (int)request.LightThreshold))
            .Name,
    };
}
