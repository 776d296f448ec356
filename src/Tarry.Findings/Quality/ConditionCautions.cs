using Tarry.Findings.Conditions;

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

        var missed = condition.Counts.Missed;
        var presses = condition.Counts.Used + missed;
        if (missed == 0)
        {
            yield break;
        }

        var share = (double)missed / presses;
        yield return new Caution(CautionKind.MissedShare, condition.Id, new Dictionary<string, double>
        {
            ["missed"] = missed,
            ["presses"] = presses,
            ["missed_percent"] = share * 100,
        });
        if (share >= LossFavoursFrom)
        {
            yield return new Caution(CautionKind.LossFavours, condition.Id, new Dictionary<string, double> { ["missed_percent"] = share * 100 });
        }
    }
}
