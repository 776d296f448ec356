using Tarry.Metrology;

namespace Tarry.Rig.SimulatedBench;

/// <summary>Sends presses through a <see cref="SimulatedDevice"/>.</summary>
/// <remarks>Each press has a generator of its own, so that one press more or less changes no other. Times are true microseconds since the bench was made.</remarks>
internal sealed class SimulatedChain(SimulatedDevice device, ulong seed)
{
    private ulong presses;
    private double? firstPressUs;

    /// <summary>Presses a contact, or moves an axis as given.</summary>
    public SimulatedResponse Press(double pressUs, SimulatedAxis? axis) => Press(pressUs, axis, toScreen: true);

    /// <summary>The same, up to where a program on the host is told of it: no frame, no screen, no sensor.</summary>
    public SimulatedResponse PressSeenByHost(double pressUs, SimulatedAxis? axis) => Press(pressUs, axis, toScreen: false);

    private SimulatedResponse Press(double pressUs, SimulatedAxis? axis, bool toScreen)
    {
        var random = SeededGenerator.ForPart(seed, presses++);
        firstPressUs ??= pressUs;
        if (random.NextDouble() < device.ActiveAtPressProbability)
        {
            return new SimulatedResponse(0, 0, true);
        }

        if (random.NextDouble() < device.MissProbability)
        {
            return default;
        }

        var edges = random.NextDouble() < device.BounceProbability ? 2 + random.NextInt32(4) : 1;
        var late = random.NextDouble() < device.LateProbability ? device.LateByMs : 0;
        var noise = device.SensorNoiseSdMs > 0 ? device.SensorNoiseSdMs * random.NextNormal() : 0;
        if ((axis is null ? 0 : axis.Value.CrossingUs(device)) is not { } crossingUs)
        {
            return default;
        }

        var at = pressUs + crossingUs + (1000 * device.FixedDelayMs);
        at = NextOnGrid(at, device.ScanIntervalMs, 0, 0);
        at = Reported(at, pressUs, random);
        if (Transmitted(at, random) is not { } received)
        {
            return default;
        }

        at = received + (1000 * device.LayerCostMs);
        if (toScreen)
        {
            at = NextOnGrid(at, device.FrameIntervalMs, device.FramePhaseMs, device.FrameClockErrorPpm);
        }

        at += 1000 * ((toScreen ? device.DisplayDelayMs : 0) + device.SittingOffsetMs + Drift(pressUs) + late + (toScreen ? noise : 0));
        return new SimulatedResponse(Math.Max(at - pressUs, 0), edges, false);
    }

    private double Reported(double at, double pressUs, SeededGenerator random)
    {
        var slot = device.SlotsFollowPress
            ? NextOnGrid(at, device.ReportIntervalMs, (pressUs / 1000) + device.ReportPhaseMs, 0)
            : NextOnGrid(at, device.ReportIntervalMs, device.ReportPhaseMs, device.ReportClockErrorPpm);
        return device.ReportJitterMs > 0 ? slot + (1000 * device.ReportJitterMs * random.NextDouble()) : slot;
    }

    private double? Transmitted(double at, SeededGenerator random)
    {
        at = NextOnGrid(at, device.ConnectionIntervalMs, device.ConnectionPhaseMs, device.ReportClockErrorPpm);
        var repeatMs = device.ConnectionIntervalMs > 0 ? device.ConnectionIntervalMs : device.RetryDelayMs;
        var repeats = 0;
        while (device.RetryProbability > 0 && random.NextDouble() < device.RetryProbability)
        {
            if (++repeats > device.MaximumRetries)
            {
                return null;
            }

            at += 1000 * repeatMs;
        }

        return at + (1000 * device.LinkDelayMs);
    }

    private double Drift(double pressUs)
    {
        var seconds = (pressUs - firstPressUs!.Value) / 1e6;
        var warmUp = device.WarmUpSeconds > 0 ? device.WarmUpMs * Math.Max(0, 1 - (seconds / device.WarmUpSeconds)) : 0;
        return warmUp + (device.DriftMsPerMinute * Math.Max(0, seconds - device.DriftStartSeconds) / 60);
    }

    /// <summary>The first instant of a grid that is not before a time.</summary>
    private static double NextOnGrid(double atUs, double intervalMs, double phaseMs, double clockErrorPpm)
    {
        if (intervalMs <= 0)
        {
            return atUs;
        }

        var interval = 1000 * intervalMs / (1 + (clockErrorPpm / 1e6));
        var phase = 1000 * phaseMs;
        return phase + (Math.Ceiling((atUs - phase) / interval) * interval);
    }
}
