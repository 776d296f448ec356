namespace Tarry.Findings.DeviceOnly;

/// <summary>The report interval of the reference: how long at most it waits for a report slot of its own.</summary>
public static class ReferenceSlot
{
    /// <summary>
    /// Taken where no report rate is declared: 1 ms, the shortest interval of a full-speed USB interrupt endpoint (USB 2.0, 5.7.4),
    /// which is what a microcontroller that acts as an input device has as a rule. A mean is off by half of what this is off.
    /// </summary>
    public const double AssumedMs = 1;

    /// <summary>The interval of a declared report rate, or the assumed one.</summary>
    /// <param name="nominalReportHz">The reference's declared report rate, in reports a second; null where none is.</param>
    public static double IntervalMs(double? nominalReportHz) => nominalReportHz is { } rate ? 1000 / rate : AssumedMs;
}
