using Tarry.Rig;
using Tarry.Rig.HostEvents;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Link;
using Tarry.Studies.OpenRuns;
using Tarry.Web.Sticks;

namespace Tarry.Web.Bench;

/// <summary>The ports of this machine at which a rig may be.</summary>
public interface IBenchPorts
{
    /// <summary>Their names, the simulated bench last.</summary>
    IReadOnlyList<string> Names();

    /// <summary>The input devices of this machine, for echoes and sticks.</summary>
    IReadOnlyList<HostInputDescription> InputDevices();

    /// <summary>Where the rig of a run is, and what echoes its presses.</summary>
    /// <param name="asked">What was asked for.</param>
    /// <param name="nominalReportHz">The report rate that the condition states.</param>
    /// <param name="trialsBefore">Trials that the session has already.</param>
    /// <param name="stop">Cancelled when the run is stopped.</param>
    /// <exception cref="RigException">There is no such port.</exception>
    /// <exception cref="HostInputException">The input device cannot be opened.</exception>
    (IRigPortSource Source, HostEcho? Echo) Of(OpenRun asked, double? nominalReportHz, long trialsBefore, CancellationToken stop);

    /// <summary>Where the rig is that reads a stick's wipers.</summary>
    /// <param name="card">What is recorded.</param>
    /// <param name="stop">Cancelled when the recording is stopped.</param>
    /// <exception cref="RigException">There is no such port.</exception>
    IRigPortSource Stick(StickCard card, CancellationToken stop);

    /// <summary>An input device of this machine, open.</summary>
    /// <param name="path">As <see cref="InputDevices"/> has it.</param>
    /// <exception cref="HostInputException">There is no such device, or it cannot be opened.</exception>
    IHostInputDevice Device(string path);

    /// <summary>Where a rig is that is wired to itself.</summary>
    IRigPortSource Loop(string port);
}
