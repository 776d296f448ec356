using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Bench;

/// <summary>A run to capture: which session of which study, and how.</summary>
/// <param name="Study">The study's name on the shelf.</param>
/// <param name="Key">The session.</param>
/// <param name="Asked">Port, target, presses and bench notes.</param>
public sealed record RunCard(string Study, SessionKey Key, OpenRun Asked)
{
    /// <summary>What the capture is told.</summary>
    public RunRequest Request => new()
    {
        Key = Key,
        Settings = Asked.Run,
        Trials = Asked.Trials,
        HalfWidthMs = Asked.HalfWidthMs,
        FallingEdge = Asked.FallingEdge,
        LightThreshold = Asked.LightThreshold,
        AllowNarrowInterval = Asked.AllowNarrowInterval,
        Bench = new BenchNotes
        {
            Host = Asked.Host,
            Application = Asked.Application,
            FrameCapHz = Asked.FrameCapHz,
            RefreshHz = Asked.RefreshHz,
            Battery = Asked.Battery,
            RoomNotes = Asked.RoomNotes,
        },
    };

    /// <summary>How much real time a time on the rig is; null where it is not known or the simulated bench runs as fast as it goes.</summary>
    public TimeSpan? Remaining(TimeSpan? onTheRig) =>
        Asked.Port != SimulatedDefault.Port ? onTheRig : onTheRig / Asked.Speed;
}
