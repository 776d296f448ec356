using Tarry.Studies.Sticks;

namespace Tarry.Imports.Sticks;

/// <summary>A session of a stick as a table for other programs, one row a position: its columns and its times.</summary>
internal static class StickRows
{
    /// <summary>The names of the columns, in order; <c>docs/formats/stick.md</c> reads the same.</summary>
    public static IReadOnlyList<string> Columns(StickStimulus stimulus) => stimulus switch
    {
        StickStimulus.Angle => ["time_us", "x", "y", "stimulus_deg"],
        StickStimulus.Level => ["time_us", "x", "y", "stimulus_x", "stimulus_y"],
        _ => ["time_us", "x", "y"],
    };

    /// <summary>When a position came, in microseconds from the session's beginning, to the nanosecond.</summary>
    public static decimal TimeUs(StickSession session, int index) => TickTime.Microseconds(session.Record.Segments[0], session.Samples.Ticks[index]);
}
