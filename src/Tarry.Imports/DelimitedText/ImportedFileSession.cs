using Tarry.Studies.Sessions;

namespace Tarry.Imports.DelimitedText;

/// <summary>A session of a file, with the texts that its names were made of.</summary>
internal sealed record ImportedFileSession(SessionKey Key, string SittingText, string ConditionText, SessionBuilder Rows);
