namespace Tarry.Studies.Sessions;

/// <summary>An unbroken stretch of the tick counter. A restart of the rig ends one and begins the next.</summary>
/// <param name="BootId">The rig's boot counter, null for imports.</param>
/// <param name="FirstSequence">The sequence number of its first trial.</param>
/// <param name="TickHz">Ticks a second as stated.</param>
/// <param name="ClockFit">The fit of its clock, or null where none was possible.</param>
public sealed record Segment(int? BootId, long FirstSequence, long TickHz, ClockFitRecord? ClockFit);
