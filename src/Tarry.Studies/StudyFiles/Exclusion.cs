using Tarry.Studies.Sessions;

namespace Tarry.Studies.StudyFiles;

/// <summary>One <c>[[exclude]]</c> of the study file: trials set aside, and why.</summary>
/// <param name="Session">Which session.</param>
/// <param name="Reason">Why; never empty.</param>
/// <param name="FirstSequence">The first trial set aside; null for all.</param>
/// <param name="LastSequence">The last trial set aside; null for all.</param>
public sealed record Exclusion(SessionKey Session, string Reason, long? FirstSequence, long? LastSequence);
