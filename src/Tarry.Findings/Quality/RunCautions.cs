using Tarry.Findings.Samples;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Quality;

/// <summary>What can be said of a session while it is captured: the cautions of a sealed session, but for those that only its end can settle.</summary>
/// <remarks>
/// Each look is a test of its own. Who looks again and again sees a chance finding more often than the level of one look says, so a
/// caution of a run under way is a hint to look at the bench; what counts is the sealed session, which is tested once, with its study.
/// </remarks>
public static class RunCautions
{
    // A run begins with few trials and without a clock fit.
    private static readonly CautionKind[] SettledByTheEnd = [CautionKind.TooFewTrials, CautionKind.ClockNotFitted, CautionKind.NotFinished];

    /// <summary>The cautions of what is captured so far.</summary>
    /// <param name="captured">The session so far.</param>
    /// <param name="reportHz">The report rate that the maker states; null where none is.</param>
    public static IReadOnlyList<Caution> Of(SessionData captured, double? reportHz)
    {
        ArgumentNullException.ThrowIfNull(captured);
        var sample = SessionSampler.Prepare(captured, []);
        return
        [
            .. SessionDiagnoses.Of([sample], _ => reportHz)[0].Cautions.Where(caution => !SettledByTheEnd.Contains(caution.Kind)),
            .. ConditionCautions.OfMisses(sample.Key.ToString(), sample.Counts),
        ];
    }
}
