using Tarry.Imports.DelimitedText;
using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Imports.PacketCapture;

/// <summary>When contacts closed, on the rig's clock: of a sealed session, or of a long-form CSV.</summary>
/// <param name="Name">Where they are from.</param>
/// <param name="Seconds">The times, ascending, in seconds.</param>
public sealed record RigPresses(string Name, IReadOnlyList<double> Seconds)
{
    /// <summary>The presses of a session.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="session">The session; its rig's clock as fitted.</param>
    /// <exception cref="ImportException">It has no press times, or the rig restarted in it.</exception>
    public static RigPresses Of(string name, SessionData session)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (session.Record.Segments is not [var segment])
        {
            throw new ImportException($"The rig restarted in {name}: its times are of {session.Record.Segments.Count} clocks.", name, "Take a session without a restart.");
        }

        var clock = new TimerClock(segment.TickHz, segment.ClockFit?.RateErrorPpm ?? 0);
        var seconds = session.Trials.Select(trial => trial.PressTicks).OfType<long>().Order().Select(ticks => clock.ToMicroseconds(ticks) / 1e6).ToList();
        return seconds.Count > 0
            ? new RigPresses(name, seconds)
            : throw new ImportException($"{name} has no press times.", name, "Take a session that the rig captured, or a CSV with a column press_time_us.");
    }

    /// <summary>The presses of a long-form CSV that holds one session.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="ImportException">It cannot be read, holds several sessions, or has no press times.</exception>
    public static RigPresses Read(string path)
    {
        var plan = DelimitedTextImport.Read([path], new DelimitedTextOptions(), [])[0];
        return plan.Sessions is [var (record, trials)]
            ? Of(Path.GetFileName(path), new SessionData(record, trials, Sealed: false))
            : throw new ImportException($"The file holds {plan.Sessions.Count} sessions.", Path.GetFileName(path), "Give one with the presses of one session.");
    }
}
