using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;
using Tarry.Web.Desk;

namespace Tarry.Web.Bench;

/// <summary>What the bench of a study looked like at one moment.</summary>
/// <param name="Name">The study's name on the shelf; empty where none is chosen.</param>
public sealed record BenchSight(string Name)
{
    /// <summary>The study; null where none is chosen or it cannot be read.</summary>
    public Study? Study { get; private init; }

    /// <summary>Its newest run of this program; null where there was none.</summary>
    public BenchRun? Run { get; private init; }

    /// <summary>Its sessions that are not finished.</summary>
    public IReadOnlyList<UnfinishedSession> Unfinished { get; private init; } = [];

    /// <summary>The order to be followed; null where the study cannot be read.</summary>
    public SittingOrder? Order { get; private init; }

    /// <summary>Settings of an earlier session to begin with; null where there are none, or a run is shown.</summary>
    public (SessionKey Key, OpenRun Asked)? Earlier { get; private init; }

    /// <summary>Names of its sittings.</summary>
    public IReadOnlyList<string> Sittings { get; private init; } = [];

    /// <summary>Why the study cannot be read; null where it can.</summary>
    public StudyException? Problem { get; private init; }

    /// <summary>Looks at a study and at its newest run.</summary>
    /// <param name="desks">The studies.</param>
    /// <param name="bench">The runs.</param>
    /// <param name="name">The study's name on the shelf; empty for none.</param>
    /// <param name="sitting">The sitting whose order is followed; null for the first that has steps left.</param>
    public static BenchSight Of(StudyDesks desks, LiveBench bench, string name, string? sitting)
    {
        ArgumentNullException.ThrowIfNull(desks);
        ArgumentNullException.ThrowIfNull(bench);
        if (name.Length == 0)
        {
            return new BenchSight(name);
        }

        var run = bench.Of(name);
        try
        {
            var study = desks.Of(name)?.Open() ?? throw new StudyException($"There is no study {name} on the shelf.", null, "It may have been moved or renamed; choose another.");
            var order = SittingOrder.Of(study, sitting);
            return new BenchSight(name)
            {
                Study = study,
                Run = run,
                Unfinished = [.. UnfinishedSession.Of(study, SimulatedDefault.Port).Where(session => run is null || session.Key != run.Card.Key)],
                Order = order,
                Earlier = run is null ? EarlierSettings.Latest(study, sitting ?? order.Sitting, SimulatedDefault.Port) : null,
                Sittings = [.. study.SessionKeys.Select(key => key.Sitting).Concat(order.Sittings).Distinct()],
            };
        }
        catch (StudyException problem)
        {
            return new BenchSight(name) { Run = run, Problem = problem };
        }
    }
}
