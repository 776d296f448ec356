using Tarry.Findings.Conditions;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Quality;

/// <summary>The cautions that a condition's numbers call for as a whole.</summary>
internal static class ConditionCautions
{
    /// <summary>From this share on a loss flatters the mean.</summary>
    public const double LossFavoursFrom = 0.005;

    public static IEnumerable<Caution> Of(ConditionFinding condition)
    {
        if (condition.UsedSessions == 1)
        {
            yield return new Caution(CautionKind.OneSitting, condition.Id, new Dictionary<string, double>());
        }

        foreach (var caution in OfMisses(condition.Id, condition.Counts))
        {
            yield return caution;
        }
    }

    /// <summary>Those that misses call for.</summary>
    public static IEnumerable<Caution> OfMisses(string subject, SessionCounts counts)
    {
        var missed = counts.Missed;
        var presses = counts.Used + missed;
        if (missed == 0)
        {
            yield break;
        }

        var share = (double)missed / presses;
        yield return new Caution(CautionKind.MissedShare, subject, new Dictionary<string, double>
        {
            ["missed"] = missed,
            ["presses"] = presses,
            ["missed_percent"] = share * 100,
        });
        if (share >= LossFavoursFrom)
        {
            yield return new Caution(CautionKind.LossFavours, subject, new Dictionary<string, double> { ["missed_percent"] = share * 100 });
        }
    }
}
