using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.Recordings;

/// <summary>What a recording of one session is taken in as: a file of samples or edges does not say it.</summary>
/// <param name="Session">The session.</param>
/// <param name="Conditions">The conditions that the study has.</param>
public sealed record RecordingTarget(SessionKey Session, IReadOnlyList<ConditionEntry> Conditions);
