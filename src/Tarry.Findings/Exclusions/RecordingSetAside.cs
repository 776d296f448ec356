using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Findings.Exclusions;

/// <summary>A recording without trials, of reports or of a stick, on which no finding rests because the study file sets it aside.</summary>
/// <param name="Session">The session.</param>
/// <param name="Reason">Why, as the study file says.</param>
public sealed record RecordingSetAside(SessionKey Session, string Reason)
{
    internal static IReadOnlyList<RecordingSetAside> Of(Study study) =>
    [
        .. from key in study.ReportSessionKeys.Concat(study.StickKeys).Order()
           from exclusion in study.File.Exclusions
           where exclusion.Session == key && exclusion is { FirstSequence: null, LastSequence: null }
           select new RecordingSetAside(key, exclusion.Reason),
    ];
}
