using Tarry.Findings.Conditions;
using Tarry.Reports.Wording;
using static Tarry.Reports.Wording.Numbers;

namespace Tarry.Reports.Documents;

/// <summary>The steps from contact to sensor, and what a study says of each for a condition; empty where it says nothing.</summary>
public static class ChainSteps
{
    /// <summary>The steps in the order in which a press passes them.</summary>
    public static IReadOnlyList<(string Name, Func<ConditionFinding, string> Known)> All { get; } =
    [
        ("contact", condition => Level(condition, "control")),
        ("device", Device),
        ("report slot", condition => condition.NominalReportHz is { } rate ? $"{Rate(rate, "report")} stated" : ""),
        ("link", condition => Join(", ", Level(condition, "link"), Level(condition, "placement"))),
        ("host", condition => Listing.And(condition.Chain.Hosts)),
        ("software layer", condition => Level(condition, "layer")),
        ("frame", condition => Join(", ", Listing.And(condition.Chain.Applications), Rates(condition.Chain.FrameCapsHz, "frame"))),
        ("screen refresh", condition => Rates(condition.Chain.RefreshRatesHz, "refresh")),
        ("sensor", Sensor),
    ];

    /// <summary>A rate with the time between two: <c>250 frames a second (one every 4 ms)</c>.</summary>
    public static string Rate(double hertz, string of)
    {
        var noun = of == "refresh" ? "refreshes" : of + "s";
        return $"{Plain(Math.Round(hertz, 1))}{NoBreakSpace}{noun} a second (one every {Plain(Math.Round(1000 / hertz, 3))}{NoBreakSpace}ms)";
    }

    private static string Rates(IReadOnlyList<double> hertz, string of) => Listing.And([.. hertz.Select(rate => Rate(rate, of))]);

    private static string Device(ConditionFinding condition)
    {
        var firmware = Level(condition, "device_firmware");
        return Join(", ", Level(condition, "device"), Level(condition, "unit"), firmware.Length == 0 ? "" : $"firmware {firmware}");
    }

    private static string Sensor(ConditionFinding condition)
    {
        var chain = condition.Chain;
        var boards = chain.Boards.Count == 0 ? "" : $"rig {Listing.And(chain.Boards)}";
        var firmware = chain.RigFirmware.Count == 0 ? "" : $"firmware {Listing.And(chain.RigFirmware)}";
        return Join(", ", Listing.And([.. chain.Responses.Select(Response)]), boards, firmware);
    }

    private static string Response(string response) => response switch
    {
        "light" => "light sensor",
        "edge" => "electrical edge",
        "echo" => "echo by the host over the rig's line",
        _ => response,
    };

    private static string Level(ConditionFinding condition, string factor) => condition.Factors.GetValueOrDefault(factor, "");

    private static string Join(string separator, params IReadOnlyList<string> parts) => string.Join(separator, parts.Where(part => part.Length > 0));
}
