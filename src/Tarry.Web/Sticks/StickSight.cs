using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Web.Bench;
using Tarry.Web.Desk;

namespace Tarry.Web.Sticks;

/// <summary>What the sticks of a study looked like at one moment, for the page that records them.</summary>
public sealed record StickSight
{
    /// <summary>The study; null where it cannot be read.</summary>
    public Study? Study { get; private init; }

    /// <summary>Its newest recording of this program; null where there was none.</summary>
    public StickRun? Run { get; private init; }

    /// <summary>Sessions that are sealed.</summary>
    public IReadOnlySet<SessionKey> Sealed { get; private init; } = new HashSet<SessionKey>();

    /// <summary>Recordings that a program or machine that stopped left behind.</summary>
    public IReadOnlyList<SessionKey> BrokenOff { get; private init; } = [];

    /// <summary>Names of its sittings.</summary>
    public IReadOnlyList<string> Sittings { get; private init; } = [];

    /// <summary>Why the study cannot be read; null where it can.</summary>
    public Exception? Problem { get; private init; }

    /// <summary>Looks at a study and at its newest recording.</summary>
    /// <param name="desk">The study.</param>
    /// <param name="bench">The recordings.</param>
    public static StickSight Of(StudyDesk desk, LiveBench bench)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(bench);
        var run = bench.StickOf(desk.Name);
        try
        {
            var study = desk.Open();
            SessionKey? now = run is { IsOn: true } ? run.Card.Key : null;
            return new StickSight
            {
                Study = study,
                Run = run,
                Sealed = study.StickKeys.ToHashSet(),
                BrokenOff = [.. StickCapture.BrokenOff(study).Where(key => key != now)],
                Sittings = [.. study.StickKeys.Concat(study.SessionKeys).Select(key => key.Sitting).Distinct().Order(StringComparer.Ordinal)],
            };
        }
        catch (Exception problem) when (problem is StudyException or IOException or UnauthorizedAccessException)
        {
            return new StickSight { Run = run, Problem = problem };
        }
    }
}
