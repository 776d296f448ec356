using Tarry.Studies.Trials;

namespace Tarry.Imports.LongForm;

/// <summary>A trial as a row of the long form: times in microseconds on the fitted clock, to the nanosecond.</summary>
internal readonly record struct LongFormRow(Trial Trial, decimal? PressTimeUs, decimal? LatencyUs, decimal? LatencyHighUs, bool Excluded);
