using Tarry.Findings.Budgets;
using Tarry.Findings.Samples;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Quality;

/// <summary>Whether absolute latencies rest on default limits because the rig that captured them was not calibrated: once a study.</summary>
internal static class RigCautions
{
    public static IEnumerable<Caution> Of(IReadOnlyList<SessionSample> samples, IReadOnlyDictionary<SessionKey, SessionChain> chains)
    {
        // An import comes from another rig, of which the study file tells nothing.
        var captured = samples.Where(sample => sample.Record.Source is null && chains.ContainsKey(sample.Key)).ToList();
        var uncalibrated = captured.Count(sample => !chains[sample.Key].IsCalibrated);
        if (uncalibrated > 0)
        {
            yield return new Caution(CautionKind.RigUncalibrated, "the study", new Dictionary<string, double>
            {
                ["uncalibrated_sessions"] = uncalibrated,
                ["captured_sessions"] = captured.Count,
            });
        }
    }
}
