using Tarry.Rig.SimulatedBench;
using Tarry.Studies.StudyFiles;

namespace Tarry.Demo;

/// <summary>
/// The invented bench of the demonstration: pads of three makers that do not exist, what testers meet with real ones, and
/// the truth behind each.
/// </summary>
internal static class DemoScenario
{
    public const string Title = "Three pads, a dongle and two layers (simulated bench)";
    public const string Reference = "bench-board";
    public const double MarginMs = 0.5;
    public const int TrialsPerSession = 600;

    /// <summary>In this condition every press follows the one before by nearly the same time.</summary>
    public const string Lattice = "tamarind-usb-even-presses";

    /// <summary>In this condition and sitting the device is cold at first.</summary>
    public const string Drifting = "sedge-dongle";

    public const string DriftingSitting = "thursday";

    /// <summary>In this condition and sitting the rig restarts.</summary>
    public const string Rebooted = "quill-usb";

    public const string RebootedSitting = "tuesday";

    public static readonly IReadOnlyList<string> Sittings = ["monday", "tuesday", "wednesday", "thursday"];

    public static readonly IReadOnlyList<DemoCondition> Conditions =
    [
        Of(Reference, "Bench board", "A", "usb", "none", 1000, Wire(1, 0.15)),
        Of("quill-usb", "Quill 2", "0041", "usb", "none", 1000, Wire(1, 1.35)),
        Of("quill-dongle", "Quill 2", "0041", "dongle", "none", 500, Dongle(2, 1.9)),
        Of("quill-dongle-5m", "Quill 2", "0041", "dongle", "none", 500, Dongle(2, 1.9) with { RetryProbability = 0.12 }, "5 m"),
        Of("quill-radio", "Quill 2", "0041", "radio", "none", 133.333, Radio(2.6)),
        Of("ferrule-usb", "Ferrule One", "F-117", "usb", "none", 500, Wire(2, 2.2)),
        Of("ferrule-usb-overlay", "Ferrule One", "F-117", "usb", "overlay", 500, Wire(2, 2.2) with { LayerCostMs = 0.6 }),
        Of("ferrule-usb-remapper", "Ferrule One", "F-117", "usb", "remapper", 500, Wire(2, 2.2)),
        Of("tamarind-usb", "Tamarind", "20-3", "usb", "none", 125, Wire(8, 3.1)),
        Of(Lattice, "Tamarind", "20-3", "usb", "none", 125, Wire(8, 3.1)),
        Of("tamarind-radio", "Tamarind Air", "7", "radio", "none", 133.333, Radio(4.4) with { MissProbability = 0.012 }),
        Of("sedge-dongle", "Sedge", "S2", "dongle", "none", 1000, Dongle(1, 1.2) with { LateProbability = 0.015, LateByMs = 14 }),
    ];

    private static DemoCondition Of(
        string id,
        string device,
        string unit,
        string link,
        string layer,
        double nominalReportHz,
        SimulatedDevice simulated,
        string placement = "0.3 m") =>
        new(
            new ConditionEntry
            {
                Id = id,
                Factors = new Dictionary<string, string>
                {
                    ["device"] = device,
                    ["unit"] = unit,
                    ["link"] = link,
                    ["layer"] = layer,
                    ["control"] = "button",
                    ["placement"] = placement,
                },
                NominalReportHz = nominalReportHz,
            },
            simulated with { FrameIntervalMs = FrameIntervalMs, DisplayDelayMs = 5.2, SensorNoiseSdMs = 0.12, BounceProbability = 0.05 });

    // A frame cap off the ratio to all report rates, so that no pair of periods beats slowly.
    private const double FrameIntervalMs = 4.1;

    private static SimulatedDevice Wire(double reportIntervalMs, double fixedDelayMs) =>
        new() { ReportIntervalMs = reportIntervalMs, FixedDelayMs = fixedDelayMs, ReportClockErrorPpm = 35, FrameClockErrorPpm = -20 };

    private static SimulatedDevice Dongle(double reportIntervalMs, double fixedDelayMs) =>
        Wire(reportIntervalMs, fixedDelayMs) with { LinkDelayMs = 0.9, RetryProbability = 0.03, RetryDelayMs = 4 };

    private static SimulatedDevice Radio(double fixedDelayMs) => new()
    {
        FixedDelayMs = fixedDelayMs,
        ConnectionIntervalMs = 7.5,
        LinkDelayMs = 0.7,
        RetryProbability = 0.04,
        ReportClockErrorPpm = 35,
        FrameClockErrorPpm = -20,
    };
}
