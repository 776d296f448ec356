namespace Tarry.Studies.Sessions;

/// <summary>How a live run pressed, in the units of the rig's parameters.</summary>
/// <param name="Response">Response source: <c>edge</c>, <c>light</c> or <c>echo</c>.</param>
/// <param name="IntervalMinUs">Shortest interval from press to press.</param>
/// <param name="IntervalMaxUs">Longest interval.</param>
/// <param name="HoldUs">How long the contact is held.</param>
/// <param name="TimeOutUs">After this a press counts as missed.</param>
/// <param name="RearmUs">Lock-out after a trial.</param>
/// <param name="Seed">Seed of the interval generator.</param>
public sealed record RunSettings(string Response, long IntervalMinUs, long IntervalMaxUs, long HoldUs, long TimeOutUs, long RearmUs, uint Seed);
