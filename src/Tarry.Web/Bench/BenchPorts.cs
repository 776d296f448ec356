using Tarry.Rig;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies.OpenRuns;
using Tarry.Web.Sticks;

namespace Tarry.Web.Bench;

/// <summary>Serial ports and input devices of this machine, and the simulated bench, held back so that it can be watched.</summary>
/// <param name="time">The clock that the simulated bench keeps pace with.</param>
public sealed class BenchPorts(TimeProvider time) : IBenchPorts
{
    private const uint SimulatedStickSeed = 1;

    /// <inheritdoc/>
    public IReadOnlyList<string> Names() => [.. SerialRigPort.List(), SimulatedDefault.Port];

    /// <inheritdoc/>
    public IReadOnlyList<HostInputDescription> InputDevices() => HostInput.OfThisMachine().List();

    /// <inheritdoc/>
    public (IRigPortSource Source, HostEcho? Echo) Of(OpenRun asked, double? nominalReportHz, long trialsBefore, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(asked);
        if (asked.Port != SimulatedDefault.Port)
        {
            RequireListed(asked.Port);
            return (new SerialRigPortSource(asked.Port, forEcho: asked.Echo is not null), Echo(asked.Echo, null));
        }

        var bench = new SimulatedRigPortSource(SimulatedDefault.Device(nominalReportHz), SimulatedDefault.Rig(asked.Run.Seed, trialsBefore));
        IRigPortSource source = asked.Speed is { } speed ? new PacedPortSource(bench, speed, time, stop) : bench;
        return (source, Echo(asked.Echo, bench.HostInput));
    }

    /// <inheritdoc/>
    public IRigPortSource Stick(StickCard card, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(card);
        if (!card.IsSimulated)
        {
            RequireListed(card.Source);
            return new SerialRigPortSource(card.Source);
        }

        var bench = SimulatedDefault.StickBench(SimulatedStickSeed, card.Request);
        return card.Speed is { } speed ? new PacedPortSource(bench, speed, time, stop) : bench;
    }

    /// <inheritdoc/>
    public IHostInputDevice Device(string path) => InputDevices().Any(device => device.Path == path)
        ? HostInput.OfThisMachine().Open(path, exclusive: false)
        : throw new HostInputException($"There is no input device {path} now.", "Connect it, then look for devices again.");

    /// <inheritdoc/>
    public IRigPortSource Loop(string port)
    {
        if (port == SimulatedDefault.Port)
        {
            return new SimulatedRigPortSource(SimulatedDefault.Loop, SimulatedDefault.Rig(1));
        }

        RequireListed(port);
        return new SerialRigPortSource(port);
    }

    // The port's name comes from a window or a file: only what is a serial port of this machine is opened.
    private static void RequireListed(string port)
    {
        if (!SerialRigPort.List().Contains(port))
        {
            throw new RigException($"There is no serial port {port} now.", "Plug the rig in, then look for ports again; on Linux see that you may open it (group dialout).");
        }
    }

    private static HostEcho? Echo(OpenRunEcho? asked, IHostInputFeed? simulated)
    {
        if (asked is null)
        {
            return null;
        }

        var feed = simulated ?? new HostInputFeed(() => HostInput.OfThisMachine().Open(asked.Device, asked.Exclusive));
        try
        {
            return new HostEcho(feed, EchoTrigger.Of(feed.Description, asked.Code, asked.Level, asked.Falling));
        }
        catch
        {
            feed.End();
            throw;
        }
    }
}
