using Tarry.Rig.Runs;
using Tarry.Rig.SimulatedBench;
using Tarry.Rig.Sticks;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Web.Sticks;

/// <summary>What a window has filled in for a recording of a stick.</summary>
public sealed class StickForm
{
    /// <summary>What stands before the path of a device, which a port's name could equal.</summary>
    public const string DeviceMark = "device:";

    /// <summary>The sitting.</summary>
    public string Sitting { get; set; } = "";

    /// <summary>The condition.</summary>
    public string Condition { get; set; } = "";

    /// <summary>What is done.</summary>
    public StickProcedure Procedure { get; set; }

    /// <summary>The rig's port, or the path of a device after <see cref="DeviceMark"/>.</summary>
    public string Source { get; set; } = "";

    /// <summary>Whether this computer reads a device.</summary>
    public bool IsOfDevice => Source.StartsWith(DeviceMark, StringComparison.Ordinal);

    /// <summary>Whether the simulated stick is read.</summary>
    public bool IsSimulated => Source == SimulatedDefault.Port;

    /// <summary>Of the simulated rig: its seconds in one; 0 for as fast as it goes.</summary>
    public double Speed { get; set; } = 1;

    /// <summary>How long the steps take in all; null for the usual time.</summary>
    public double? Seconds { get; set; }

    /// <summary>Time to take hold of the stick before the first step.</summary>
    public double? ReadySeconds { get; set; } = 5;

    /// <summary>Time between readings.</summary>
    public long? IntervalUs { get; set; } = 1_000;

    /// <summary>The greatest reading stands for the board's supply, not for the voltage at AREF.</summary>
    public bool AgainstSupply { get; set; }

    /// <summary>The wiper of y gives less as the stick is pushed away.</summary>
    public bool YIsDown { get; set; }

    /// <summary>The standard uncertainty of the stimulus; null where not stated.</summary>
    public double? StimulusUncertainty { get; set; }

    /// <summary>How the procedure is done.</summary>
    public StickGuide Guide => StickGuide.Of(Procedure);

    /// <summary>Whether the procedure knows the true position.</summary>
    public bool HasStimulus => Procedure is StickProcedure.AngleStops or StickProcedure.Substitution;

    /// <summary>The recording as filled in.</summary>
    /// <param name="study">The study's name on the shelf.</param>
    /// <exception cref="RunSettingsException">Something is missing or cannot be.</exception>
    public StickCard Card(string study)
    {
        Require(Names.IsName(Condition), "No condition is chosen.", "Choose what is under test; declare it in the study first.");
        Require(Names.IsName(Sitting), "The sitting needs a name.", "Use lower-case letters, digits, '-' or '_', such as monday.");
        Require(Source.Length > 0, "Nothing is chosen that reads the stick.", "Plug the rig in and look again, or choose a device or the simulated stick.");
        Require(!IsOfDevice || !HasStimulus, "A device's reports do not say where the stick stood in truth.", "Have the rig read the wipers, or record with 'tarry host record' or 'tarry import' in a terminal.");
        Require(ReadySeconds is >= 0 and <= 600, "The time to get ready cannot be.", "Give 0 to 600 s.");
        Require(
            IntervalUs is >= StickRecordingRequest.LeastIntervalUs and <= StickRecordingRequest.MostIntervalUs,
            "The time between readings cannot be.",
            Invariant($"Give {StickRecordingRequest.LeastIntervalUs} to {StickRecordingRequest.MostIntervalUs} us."));
        Require(StimulusUncertainty is null or >= 0, "An uncertainty cannot be less than nothing.", "Give degrees, or a share of the supply; or leave it empty.");
        var request = new StickRecordingRequest(Procedure)
        {
            Seconds = Seconds,
            ReadySeconds = ReadySeconds!.Value,
            IntervalUs = (uint)IntervalUs!.Value,
            AgainstSupply = AgainstSupply,
            YIsDown = YIsDown,
            StimulusUncertainty = HasStimulus ? StimulusUncertainty : null,
        };
        _ = request.Guide;
        return new StickCard(study, new SessionKey(Sitting, Condition, Procedure), IsOfDevice ? Source[DeviceMark.Length..] : Source, request, IsSimulated && Speed > 0 ? Speed : null)
        {
            IsOfDevice = IsOfDevice,
        };
    }

    private static void Require(bool holds, string message, string remedy)
    {
        if (!holds)
        {
            throw new RunSettingsException(message, remedy);
        }
    }
}
