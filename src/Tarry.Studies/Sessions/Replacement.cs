namespace Tarry.Studies.Sessions;

/// <summary>What a corrected session replaces, and why. The replaced one stays on the disk and is not read.</summary>
/// <param name="Entry">The folder in <c>sessions/</c> that it replaces.</param>
/// <param name="Reason">Why; never empty.</param>
public sealed record Replacement(string Entry, string Reason);
