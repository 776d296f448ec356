namespace Tarry.Reports.Wording;

/// <summary>What is told of one side of a stick, in a few words.</summary>
/// <param name="Text">The words.</param>
/// <param name="IsFault">Whether a departure from a faultless stick is told.</param>
public sealed record StickVerdict(string Text, bool IsFault);
