using Tarry.Rig.Frames;

namespace Tarry.Rig.SimulatedBench;

/// <summary>The axis that a simulated rig moves: a straight ramp, or a step, from one level to another.</summary>
/// <param name="Low">The level at rest, 1/65535 of the span.</param>
/// <param name="High">The level pressed.</param>
/// <param name="RampUs">How long the way takes.</param>
internal readonly record struct SimulatedAxis(double Low, double High, double RampUs)
{
    private const uint Contact = 0;
    private const uint Converter = 2;
    private const int Halvings = 40;

    /// <summary>What a rig with these parameters moves; null for a contact.</summary>
    public static SimulatedAxis? Of(IReadOnlyDictionary<string, uint> parameters)
    {
        var actuator = parameters[RigParameter.Actuator.Key];
        return actuator == Contact ? null : new SimulatedAxis(
            parameters[RigParameter.AxisLow.Key],
            parameters[RigParameter.AxisHigh.Key],
            actuator == Converter ? parameters[RigParameter.AxisRamp.Key] : 0);
    }

    /// <summary>When the device sees its own threshold crossed, in microseconds after the press; null for never.</summary>
    public double? CrossingUs(SimulatedDevice device)
    {
        var windowUs = 1000 * device.AxisFilterMs;
        var part = (device.AxisThreshold - Low) / (High - Low);
        if (part is <= 0 or > 1)
        {
            return part <= 0 ? 0 : null;
        }

        var (before, after) = (0.0, RampUs + windowUs);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (before + after) / 2;
            (before, after) = Filtered(middle, windowUs) < part ? (middle, after) : (before, middle);
        }

        return after;
    }

    /// <summary>The mean of the ramp, as a part of its height, over the window that ends at a time.</summary>
    private double Filtered(double us, double windowUs) => windowUs > 0
        ? (Area(us) - Area(us - windowUs)) / windowUs
        : us >= RampUs ? 1 : us / RampUs;

    private double Area(double us) => us <= 0 ? 0 : us < RampUs ? us * us / (2 * RampUs) : us - (RampUs / 2);
}
