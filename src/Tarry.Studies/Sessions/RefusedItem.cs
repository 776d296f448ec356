namespace Tarry.Studies.Sessions;

/// <summary>Something that came in and could not be kept as a trial's data, and why.</summary>
/// <param name="Place">Where: <c>line 17</c>, <c>seq 204</c>, <c>byte 1034</c>.</param>
/// <param name="Reason">Why, in words.</param>
public sealed record RefusedItem(string Place, string Reason);
