using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using Spectre.Console;
using Tarry.Rig.Proofs;

namespace Tarry.Output;

/// <summary>What a rig proved, as a table of points with a pass or a reason, or as JSON.</summary>
internal static class ProofText
{
    private const int WideEnough = 120;

    // The last one where there is room.
    private static readonly string[] Headings = ["point", "", "found", "limit", "the limit's source"];

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes a proof.</summary>
    /// <param name="result">What was proved.</param>
    /// <param name="stored">The name under which the calibration was stored; null if it was not.</param>
    /// <param name="asJson">For a program, not for a person.</param>
    /// <param name="terminal">Where to.</param>
    public static void Write(ProofResult result, string? stored, bool asJson, Terminal terminal)
    {
        if (asJson)
        {
            terminal.Out.WriteLine(JsonSerializer.Serialize(new { result.Passed, Stored = stored, result.Calibration, result.Points }, Options));
            return;
        }

        if (result.Calibration is { } rig)
        {
            terminal.Out.WriteLine($"{rig.Board}, firmware {rig.Firmware}, {(rig.TickHz / 1e6).ToString("0.###", CultureInfo.InvariantCulture)} MHz timer, by {rig.Response}{(rig.ThroughActuator ? " through the actuator" : "")}");
        }

        WriteTable(result, terminal);
        foreach (var point in result.Points.Where(point => point.Passed == false))
        {
            terminal.Error.WriteLine($"{point.Name}: {point.Found}; {point.Limit} is asked for.");
            terminal.Error.WriteLine($"  what to do: {point.Remedy}");
        }

        terminal.Out.WriteLine(result.Passed ? "The rig has proved itself." : "The rig has not proved itself.");
        if (stored is not null)
        {
            terminal.Out.WriteLine($"Stored as calibration {stored}; runs of this rig that follow refer to it.");
        }
    }

    private static void WriteTable(ProofResult result, Terminal terminal)
    {
        var console = terminal.Tables();
        var columns = console.Profile.Width >= WideEnough ? Headings.Length : Headings.Length - 1;
        var table = new Table { Border = TableBorder.Simple, UseSafeBorder = true };
        foreach (var name in Headings.Take(columns))
        {
            table.AddColumn(name);
        }

        foreach (var point in result.Points)
        {
            var verdict = point.Passed switch { true => "pass", false => "fails", null => "-" };
            table.AddRow(new[] { point.Name, verdict, point.Found, point.Limit, point.Basis }.Take(columns).Select(cell => new Text(cell)));
        }

        console.Write(table);
    }
}
