using Tarry.Findings.Sticks.Recordings;

namespace Tarry.Findings.Sticks.Rim;

/// <summary>The replicates of a sweep: a turn each way together, or single turns where there are not two such pairs.</summary>
internal sealed class RimUnits
{
    private readonly IReadOnlyList<IReadOnlyList<RimTurn>> units;

    private RimUnits(IReadOnlyList<IReadOnlyList<RimTurn>> units, IReadOnlyList<RimProfile> profiles, IReadOnlyList<(RimProfile CounterClockwise, RimProfile Clockwise)> pairs, string name) =>
        (this.units, Profiles, Pairs, Name) = (units, profiles, pairs, name);

    public string Name { get; }

    public int Count => units.Count;

    public IReadOnlyList<RimProfile> Profiles { get; }

    /// <summary>Turns each way, in order; empty where one way was turned only.</summary>
    public IReadOnlyList<(RimProfile CounterClockwise, RimProfile Clockwise)> Pairs { get; }

    public double PositionsATurn => units.SelectMany(unit => unit).Average(turn => (double)(turn.To - turn.From));

    public static RimUnits Of(StickRecording recording, IReadOnlyList<RimTurn> turns, int bins)
    {
        var profiles = turns.ToDictionary(turn => turn, turn => RimProfile.Of(recording, turn, bins));
        var pairs = turns.Where(turn => turn.CounterClockwise).Zip(turns.Where(turn => !turn.CounterClockwise)).ToList();
        List<(RimProfile, RimProfile)> both = [.. pairs.Select(pair => (profiles[pair.First], profiles[pair.Second]))];
        return pairs.Count >= 2
            ? new RimUnits([.. pairs.Select(pair => new[] { pair.First, pair.Second })], [.. both.Select(pair => RimProfile.MeanOf([pair.Item1, pair.Item2]))], both, "turns each way")
            : new RimUnits([.. turns.Select(turn => new[] { turn })], [.. turns.Select(turn => profiles[turn])], both, "turns");
    }

    /// <summary>A value of each unit: the mean over its turns, where all have one.</summary>
    public double[] Values(Func<RimTurn, double?> of) => [.. units
        .Select(unit => unit.Select(of).ToList())
        .Where(values => values.All(value => value is not null))
        .Select(values => values.Average()!.Value)];
}
