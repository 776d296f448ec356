namespace Tarry.Rig.SimulatedBench;

/// <summary>Who is told what happens in a simulated run.</summary>
/// <param name="Pressed">The contact closed, and the device has made up its mind.</param>
/// <param name="HostTold">The device's report of a press will reach the host at this true time, in microseconds.</param>
/// <param name="Finished">A trial is over.</param>
/// <param name="Ended">The run is over, for this reason.</param>
internal sealed record SimulatedRunListener(Action<SimulatedTrial> Pressed, Action<double> HostTold, Action<long, SimulatedTrial> Finished, Action<long, string> Ended);
