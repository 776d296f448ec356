using Tarry.Findings.Quality;

namespace Tarry.Findings.Tests.Simulation;

/// <summary>The designs whose error rates are known: named, so that a test, a soak run and the page of a method mean the same.</summary>
internal static class SimulatedDesigns
{
    private static readonly (string Link, double ReportMs)[] Links = [("usb", 1), ("usb", 8), ("dongle", 2), ("radio", 7.5)];

    /// <summary>Studies in which all conditions have one mean.</summary>
    public static IReadOnlyDictionary<string, SimulatedDesign> Null { get; } = new Dictionary<string, SimulatedDesign>
    {
        ["3 conditions, 2 sittings"] = Alike(3, 2),
        ["3 conditions, 3 sittings"] = Alike(3, 3),
        ["6 conditions, 2 sittings"] = Alike(6, 2),
        ["6 conditions, 4 sittings"] = Alike(6, 4),
        ["12 conditions, 2 sittings"] = Alike(12, 2),
        ["12 conditions, 3 sittings"] = Alike(12, 3),
        ["12 conditions, 4 sittings"] = Alike(12, 4),
        ["12 conditions, 6 sittings"] = Alike(12, 6),
        ["12 conditions, 4 sittings, 20 % of sessions missing"] = Alike(12, 4) with { MissingShare = 0.2 },
        ["12 conditions, 4 sittings, offsets uneven by half to double"] = Uneven(Alike(12, 4), 2),
        ["12 conditions, 3 sittings, one condition at three times the offsets"] = OneWild(Alike(12, 3), 3),
        ["6 conditions, 3 sittings, one condition at three times the offsets"] = OneWild(Alike(6, 3), 3),
        ["6 conditions, 2 sittings, radio at three times the offsets"] = RadioWild(Alike(6, 2), 3),
        ["12 conditions, 3 sittings, two-valued offsets"] = Alike(12, 3) with { TwoValued = true },
        ["12 conditions, 3 sittings, offsets all shared"] = Alike(12, 3) with { SharedSdMs = 0.3, OwnSdMs = 0.02 },
        ["12 conditions, 4 sittings, no offsets"] = Alike(12, 4) with { SharedSdMs = 0, OwnSdMs = 0 },
    };

    /// <summary>Studies of clean sessions, wire, dongle and radio, with and without a late tail.</summary>
    public static IReadOnlyDictionary<string, SimulatedDesign> Clean { get; } = new Dictionary<string, SimulatedDesign>
    {
        ["8 conditions, 2 sittings, 400 trials"] = Mixed(8, 2, 400),
        ["8 conditions, 4 sittings, 600 trials"] = Mixed(8, 4, 600),
        ["12 conditions, 3 sittings, 600 trials"] = Mixed(12, 3, 600),
        ["24 conditions, 4 sittings, 400 trials"] = Mixed(24, 4, 400),
        ["24 conditions, 4 sittings, 1500 trials"] = Mixed(24, 4, 1500),
        ["8 conditions, 4 sittings, 400 trials, all 8 ms blocks"] = Blocks(8, 4, 400),
        ["8 conditions, 4 sittings, 400 trials, no frames"] = NoFrames(Mixed(8, 4, 400)),
        ["8 conditions, 4 sittings, 150 trials"] = Mixed(8, 4, 150),
    };

    /// <summary>Faults, and the cautions that name them.</summary>
    public static IReadOnlyDictionary<string, (SimulatedCondition Fault, CautionKind[] Kinds)> Faults { get; } = new Dictionary<string, (SimulatedCondition, CautionKind[])>
    {
        ["warm-up of 0.5 ms, time constant a fifth of the session"] = (Suspect with { Along = WarmUp(0.5) }, Changes),
        ["warm-up of 1 ms, time constant a fifth of the session"] = (Suspect with { Along = WarmUp(1) }, Changes),
        ["warm-up of 2 ms, time constant a fifth of the session"] = (Suspect with { Along = WarmUp(2) }, Changes),
        ["warm-up of 1 ms, 1 ms report interval"] = (Suspect with { Along = WarmUp(1), ReportMs = 1 }, Changes),
        ["step of 0.4 ms at 40 %"] = (Suspect with { Along = Step(0.4) }, Changes),
        ["step of 0.8 ms at 40 %"] = (Suspect with { Along = Step(0.8) }, Changes),
        ["step of 1.2 ms at 40 %"] = (Suspect with { Along = Step(1.2) }, Changes),
        ["presses locked to 8 ms, rate stated"] = (Suspect with { Presses = SimulatedPresses.Locked, NominalReportHz = 125 }, [CautionKind.PhaseLocked]),
        ["presses locked to 8 ms, rate not stated"] = (Suspect with { Presses = SimulatedPresses.Locked }, [CautionKind.PhaseLocked]),
        ["presses every 100 ms +- 2 ms"] = (Suspect with { Presses = SimulatedPresses.Lattice }, [CautionKind.PressLattice]),
        ["loss of 1 %"] = (Suspect with { MissedShare = 0.01 }, [CautionKind.LossFavours]),
    };

    /// <summary>Layers that cost something or nothing.</summary>
    public static IReadOnlyDictionary<string, SimulatedDesign> Layers { get; } = new Dictionary<string, SimulatedDesign>
    {
        ["1.0 ms, 1 device, 4 sittings, session sd 0.15"] = Layer(1, 1, 4, 0.15),
        ["1.0 ms, 3 devices, 4 sittings, session sd 0.3"] = Layer(1, 3, 4, 0.3),
        ["1.0 ms, 3 devices, 2 sittings, session sd 0.15"] = Layer(1, 3, 2, 0.15),
        ["0.0 ms, 1 device, 4 sittings, session sd 0.15"] = Layer(0, 1, 4, 0.15),
        ["0.0 ms, 3 devices, 4 sittings, session sd 0.15"] = Layer(0, 3, 4, 0.15),
        ["0.0 ms, 3 devices, 4 sittings, session sd 0.3"] = Layer(0, 3, 4, 0.3),
        ["0.0 ms, 1 device, 2 sittings, session sd 0.3"] = Layer(0, 1, 2, 0.3),
        ["1.0 ms but 0 to 2 ms by device, 3 devices, 4 sittings, session sd 0.15"] = Layer(1, 3, 4, 0.15, spreadMs: 1),
    };

    /// <summary>One clean study and in it one condition that is not.</summary>
    public static SimulatedDesign WithOne(SimulatedCondition fault, int trials = 1500, int sittings = 3) => new()
    {
        Conditions = [.. Mixed(7, sittings, trials).Conditions, fault],
        Sittings = sittings,
        Trials = trials,
    };

    /// <summary>A condition to spoil.</summary>
    public static SimulatedCondition Suspect => new("suspect", Factors("suspect", "usb", "none")) { MeanMs = 14, ReportMs = 8 };

    /// <summary>A layer that costs this much, on so many devices, against the devices without it.</summary>
    public static SimulatedDesign Layer(double costMs, int devices, int sittings, double ownSdMs, int trials = 400, double spreadMs = 0) => new()
    {
        Conditions =
        [
            new SimulatedCondition("bench", Factors("bench", "usb", "none")) { MeanMs = 8 },
            .. Enumerable.Range(1, devices).SelectMany(device => new[]
            {
                new SimulatedCondition($"d{device}", Factors($"d{device}", "usb", "none")) { MeanMs = 8 + device },
                new SimulatedCondition($"d{device}-overlay", Factors($"d{device}", "usb", "overlay")) { MeanMs = 8 + device + costMs + (spreadMs * (device - ((devices + 1) / 2.0))) },
            }),
        ],
        KnowsPressTimes = false,
        Sittings = sittings,
        Trials = trials,
        OwnSdMs = ownSdMs,
    };

    private static CautionKind[] Changes => [CautionKind.Drift, CautionKind.ChangePoint];

    private static Func<int, int, double> WarmUp(double sizeMs) => (trial, trials) => sizeMs * Math.Exp(-5.0 * trial / trials);

    private static Func<int, int, double> Step(double sizeMs) => (trial, trials) => trial >= 0.4 * trials ? sizeMs : 0;

    // Half of the devices by a second link, a third with a layer: three factors differ alone somewhere.
    private static SimulatedDesign Alike(int conditions, int sittings)
    {
        (string Link, string Layer, double ReportMs)[] ways = [("usb", "none", 1), ("usb", "overlay", 1), ("radio", "none", 7.5), ("usb", "remapper", 1)];
        return new()
        {
            Conditions =
            [
                .. Enumerable.Range(0, conditions).Select(index =>
                {
                    var (link, layer, report) = ways[index % ways.Length];
                    return new SimulatedCondition($"c{index}", Factors($"d{index / ways.Length}", link, layer)) { ReportMs = index / ways.Length == 1 ? 8 : report };
                }),
            ],
            KnowsPressTimes = false,
            Sittings = sittings,
        };
    }

    private static SimulatedDesign Uneven(SimulatedDesign design, double ratio) => Each(design, (condition, index) =>
        condition with { OffsetFactor = Math.Pow(ratio, (2.0 * index / (design.Conditions.Count - 1)) - 1) });

    private static SimulatedDesign OneWild(SimulatedDesign design, double factor) => Each(design, (condition, index) =>
        index == 1 ? condition with { OffsetFactor = factor } : condition);

    private static SimulatedDesign RadioWild(SimulatedDesign design, double factor) => Each(design, (condition, _) =>
        condition.Factors["link"] == "radio" ? condition with { OffsetFactor = factor } : condition);

    private static SimulatedDesign NoFrames(SimulatedDesign design) => Each(design, (condition, _) => condition with { FrameMs = 0 });

    private static SimulatedDesign Each(SimulatedDesign design, Func<SimulatedCondition, int, SimulatedCondition> change) =>
        design with { Conditions = [.. design.Conditions.Select(change)] };

    private static SimulatedDesign Mixed(int conditions, int sittings, int trials) => new()
    {
        Conditions =
        [
            .. Enumerable.Range(0, conditions).Select(index =>
            {
                var (link, report) = Links[index % Links.Length];
                return new SimulatedCondition($"c{index}", Factors($"d{index / Links.Length}", link, "none"))
                {
                    MeanMs = 10 + (0.4 * index),
                    ReportMs = report,
                    NominalReportHz = 1000 / report,
                    SlotJitterMs = link == "radio" ? 0.5 : 0,
                    LateShare = index % 3 == 2 ? 0.02 : link == "usb" ? 0 : 0.005,
                };
            }),
        ],
        Sittings = sittings,
        Trials = trials,
    };

    private static SimulatedDesign Blocks(int conditions, int sittings, int trials) => Each(Mixed(conditions, sittings, trials), (condition, _) => condition with { ReportMs = 8, NominalReportHz = 125 });

    private static Dictionary<string, string> Factors(string device, string link, string layer) => new()
    {
        ["device"] = device,
        ["unit"] = "1",
        ["link"] = link,
        ["layer"] = layer,
    };
}
