using Tarry.Statistics.Uncertainty;
using static Tarry.Findings.Budgets.UncertaintySource;

namespace Tarry.Findings.Budgets;

/// <summary>
/// What is taken for a rig that was not calibrated: the limits of its class. Those from memory are themselves known to about a
/// quarter, which is 8 degrees of freedom. Explained in <c>docs/methods/uncertainty-budget.md</c>.
/// </summary>
internal static class RigClass
{
    private static readonly double FromMemory = TypeB.DegreesOfFreedom(0.25);

    public static BudgetInput Clock { get; } = BudgetInput.Between(
        ClockRate, "ppm", -5000, 5000, FromMemory, "no clock fit: ceramic resonator +-0.5 %, from memory");

    public static BudgetInput Host { get; } = BudgetInput.Between(
        HostClock, "ppm", -50, 50, FromMemory, "crystal of the host +-50 ppm, from memory");

    public static BudgetInput LightThreshold { get; } = BudgetInput.Between(
        ThresholdDelay, "us", 0, 100, FromMemory, "not calibrated: photodiode or phototransistor, from memory");

    public static BudgetInput EdgeThreshold { get; } = BudgetInput.Between(
        ThresholdDelay, "us", 0, 10, FromMemory, "not calibrated: slope of a logic line, from memory");

    public static BudgetInput EchoTransfer { get; } = BudgetInput.Between(
        ThresholdDelay, "us", 40, 1100, FromMemory, "the echo's byte takes 40 us at 250,000 baud, and up to a frame of 1 ms on USB, from memory");

    public static BudgetInput Unstated { get; } = BudgetInput.Between(
        ThresholdDelay, "us", 0, 100, FromMemory, "response not stated: taken as by light, from memory");

    public static BudgetInput Actuator { get; } = BudgetInput.Between(
        ActuatorDelay, "us", 0, 100, FromMemory, "not calibrated: optocouplers of the usual class are within 18 us by datasheet at 100 ohm, slower into more, from memory");

    public static BudgetInput OwnReading { get; } = BudgetInput.Between(
        LoopBackDelay, "us", 0, 1, FromMemory, "not calibrated: the firmware's reading in emulation is within 0.5 us, and twice that is allowed");
}
