using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>A condition in its place in the standing.</summary>
/// <param name="Condition">What is known of it.</param>
/// <param name="Rank">Its place, or null where there is no mean to rank it by.</param>
public sealed record RankedRow(ConditionFinding Condition, RankedCondition? Rank)
{
    /// <summary>Its mean, or null where the data do not suffice.</summary>
    public Estimate<Latency>? Mean => Condition.Mean as Estimate<Latency>;

    /// <summary>Whether its interval holds within one sitting only, which is why it is drawn open.</summary>
    public bool IsOpen => Mean is { Sessions: 1 };

    /// <summary>Sessions and trials: what it rests on.</summary>
    public string Basis => Mean is { } mean
        ? EstimateWording.Basis(mean.Sessions, mean.Trials)
        : EstimateWording.Basis(Condition.UsedSessions, Condition.Counts.Used);

    /// <summary>The ranks that the data allow: <c>2</c> or <c>2 to 4</c>.</summary>
    public string RankRange => Rank is not { } rank ? ""
        : rank.BestRank == rank.WorstRank ? Numbers.Whole(rank.BestRank)
        : $"{Numbers.Whole(rank.BestRank)}{Numbers.NoBreakSpace}to{Numbers.NoBreakSpace}{Numbers.Whole(rank.WorstRank)}";

    /// <summary>All conditions, ranked ones first, soonest mean first.</summary>
    public static IReadOnlyList<RankedRow> Of(FindingsDocument document)
    {
        var byId = document.Conditions.ToDictionary(condition => condition.Id);
        var ranked = document.Ranking.Where(rank => byId.ContainsKey(rank.Id)).ToList();
        var rankedIds = ranked.Select(rank => rank.Id).ToHashSet();
        return
        [
            .. ranked.Select(rank => new RankedRow(byId[rank.Id], rank)),
            .. document.Conditions.Where(condition => !rankedIds.Contains(condition.Id)).Select(condition => new RankedRow(condition, null)),
        ];
    }
}
