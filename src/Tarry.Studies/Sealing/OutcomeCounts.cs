using Tarry.Studies.Trials;

namespace Tarry.Studies.Sealing;

/// <summary>Trials by outcome, before exclusions: the <c>counts</c> of <c>session.json</c>.</summary>
internal sealed record OutcomeCounts(long Captured, long Response, long Missed, long Early, long Refused)
{
    public static OutcomeCounts Of(IReadOnlyList<Trial> trials)
    {
        long response = 0, missed = 0, early = 0, refused = 0;
        foreach (var trial in trials)
        {
            switch (trial.Outcome)
            {
                case Outcome.Response: response++; break;
                case Outcome.Missed: missed++; break;
                case Outcome.Early: early++; break;
                default: refused++; break;
            }
        }

        return new(trials.Count, response, missed, early, refused);
    }
}
