using Tarry.Findings.Conditions;

namespace Tarry.Findings.DeviceOnly;

/// <summary>The report interval of the reference: how long at most it waits for a report slot of its own.</summary>
/// <param name="IntervalMs">The interval, in milliseconds.</param>
/// <param name="Source">How it is known.</param>
public sealed record ReferenceSlot(double IntervalMs, ReferenceSlotSource Source)
{
    /// <summary>
    /// Taken where nothing better is known: 1 ms, the shortest interval of a full-speed USB interrupt endpoint (USB 2.0, 5.7.4),
    /// which is what a microcontroller that acts as an input device has as a rule. A mean is off by half of what this is off.
    /// </summary>
    public const double AssumedMs = 1;

    internal static ReferenceSlot Of(ConditionFinding reference) =>
        reference.NominalReportHz is { } rate ? new(1000 / rate, ReferenceSlotSource.Declared)
        : reference.ReportInterval?.Interval is { } measured ? new(measured.Value.Milliseconds, ReferenceSlotSource.Measured)
        : new(AssumedMs, ReferenceSlotSource.Assumed);
}
