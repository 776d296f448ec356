using Tarry.Studies;
using Tarry.Studies.Calibrations;
using Tarry.Studies.StudyFiles;

namespace Tarry.Web.Quality;

/// <summary>What a study keeps of how its trials came about: sessions, imports, calibrations, exclusions.</summary>
public sealed record CaptureBook
{
    /// <summary>The sessions, by sitting and condition.</summary>
    public required IReadOnlyList<SessionCapture> Sessions { get; init; }

    /// <summary>The imports.</summary>
    public required IReadOnlyList<ImportRecord> Imports { get; init; }

    /// <summary>The calibrations of the rig, the oldest first.</summary>
    public required IReadOnlyList<(string Name, RigCalibration Calibration)> Calibrations { get; init; }

    /// <summary>What the study file sets aside.</summary>
    public required IReadOnlyList<Exclusion> Exclusions { get; init; }

    /// <summary>Reads it: only <c>session.json</c> of each session, no trials.</summary>
    /// <exception cref="StudyException">Imports or calibrations cannot be read; a session that cannot be is among the others with the reason.</exception>
    public static CaptureBook Read(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new CaptureBook
        {
            Sessions = [.. study.SessionKeys.Select(key => Read(study, key))],
            Imports = study.Imports,
            Calibrations = study.Calibrations,
            Exclusions = study.File.Exclusions,
        };
    }

    private static SessionCapture Read(Study study, Studies.Sessions.SessionKey key)
    {
        try
        {
            return new SessionCapture(study.ReadRecord(key), null) { Key = key };
        }
        catch (StudyException problem)
        {
            return new SessionCapture(null, $"{problem.Message} {problem.Remedy}") { Key = key };
        }
    }
}
