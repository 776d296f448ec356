using Tarry.Rig.Frames;
using Tarry.Rig.HostEvents.Recording;
using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>Lets the rig's converter go through the levels of a substitution while the host records what the device says of them.</summary>
/// <remarks>A level is known to have changed between the instant before it was asked for and the one after the rig's answer, on the clock that stamps the device's reports.</remarks>
public sealed class LevelSteps : IDisposable
{
    private readonly IReadOnlyList<StickStep> steps = StickGuide.Of(StickProcedure.Substitution).Steps;
    private readonly RigConnection connection;
    private readonly double secondsAtLevel;
    private readonly Func<long> now;
    private int next;

    private LevelSteps(RigConnection connection, double secondsAtLevel, Func<long> now) =>
        (this.connection, this.secondsAtLevel, this.now) = (connection, secondsAtLevel, now);

    /// <summary>How many levels are still to come.</summary>
    public int Left => steps.Count - next;

    /// <summary>Finds the rig, which must be doing nothing.</summary>
    /// <param name="source">Where it is.</param>
    /// <param name="secondsAtLevel">How long each level stands.</param>
    /// <param name="now">The present instant in nanoseconds, on the clock of the device's stamps.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="RigException">There is none, or its firmware sets no levels.</exception>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public static LevelSteps Open(IRigPortSource source, double secondsAtLevel, Func<long> now, CancellationToken cancellation)
    {
        var connection = new RigConnection(source, _ => { });
        try
        {
            if (!connection.Open(cancellation))
            {
                throw new OperationCanceledException(cancellation);
            }

            _ = connection.Link.Ask(HostCommand.Stop);
            var steps = new LevelSteps(connection, secondsAtLevel, now);
            steps.Set(0);
            return steps;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>Sets the level that is due, if one is, and notes it in the recording.</summary>
    /// <param name="seconds">Time since the recording began.</param>
    /// <param name="recording">Where it is noted.</param>
    /// <returns>Whether there is still a level to wait for.</returns>
    /// <exception cref="RigException">The rig does not answer any more.</exception>
    public bool Step(double seconds, RecordingFile recording)
    {
        ArgumentNullException.ThrowIfNull(recording);
        if (next < steps.Count && seconds >= next * secondsAtLevel)
        {
            var before = now();
            var level = Set(steps[next++].LevelX!.Value);
            recording.AddLine(Invariant($"l {before} {now()} {level}"));
        }

        return seconds < steps.Count * secondsAtLevel;
    }

    /// <inheritdoc/>
    public void Dispose() => connection.Dispose();

    private ushort Set(double level) => connection.Link.Ask(HostCommand.Level((ushort)Math.Round(level * ushort.MaxValue))) switch
    {
        LevelFrame set => set.Level,
        RefusalFrame => throw new RigException("The rig sets no level: its firmware is an older one, or it is in a run.", "Put the firmware that came with this program on the board."),
        _ => throw new RigException("The rig does not answer.", "Check the cable; what was recorded is kept, and sealed with --recover."),
    };
}
