using System.CommandLine;
using System.Text.Json;
using Tarry.Output;
using Tarry.Reports.Publishing;
using Tarry.Rig.Sticks;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Commands;

/// <summary><c>tarry stick</c>: how truly an analog stick says where it is.</summary>
internal static class StickCommand
{
    public static Command Create(Terminal terminal) => new("stick", "How truly an analog stick says where it is: the procedures, the jig, recordings.")
    {
        Procedures(terminal), Jig(terminal), StickRecordCommand.Create(terminal), StickTakeCommand.Create(terminal),
    };

    private static Command Procedures(Terminal terminal)
    {
        var json = new Option<bool>("--json") { Description = "Answer as JSON." };
        var command = new Command("procedures", "Lists what can be done with a stick: how, how long, what it shows, when the recording is accepted.\n\nExample: tarry stick procedures")
        {
            json,
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(json))
            {
                terminal.Out.WriteLine(JsonSerializer.Serialize(
                    StickGuide.All.Select(guide => new { name = StickProcedures.Name(guide.Procedure), shows = guide.Shows, recording = guide.Recording, seconds = guide.Seconds, acceptance = guide.Acceptance, caution = guide.Caution }),
                    JsonSerializerOptions.Web));
                return ExitCode.Done;
            }

            foreach (var guide in StickGuide.All)
            {
                terminal.Out.WriteLine(Invariant($"{StickProcedures.Name(guide.Procedure)}: {guide.Shows}. About {guide.Seconds:0} s."));
                terminal.Out.WriteLine($"  do:        {guide.Recording}");
                terminal.Out.WriteLine($"  accepted:  {guide.Acceptance}.");
                if (guide.Caution is { } caution)
                {
                    terminal.Out.WriteLine($"  caution:   {caution}");
                }
            }

            terminal.Out.WriteLine("One session holds one procedure. Record the whole set in each of several sittings: sessions are what results are counted over.");
            return ExitCode.Done;
        });
        return command;
    }

    private static Command Jig(Terminal terminal)
    {
        var jig = new StopJig();
        var output = new Option<string>("--out") { Description = "The SVG file to write.", Required = true }.MustNotBeEmpty();
        var stops = new Option<int>("--stops") { Description = "How many stops.", DefaultValueFactory = _ => jig.Stops };
        var radius = Millimetres("--radius-mm", "How far the stem's axis is from the centre at a stop; less than at the device's own gate.", jig.RadiusMm);
        var stem = Millimetres("--stem-mm", "Diameter of the stem where the plate lies.", jig.StemMm);
        var print = Millimetres("--print-tolerance-mm", "Half width of where a printed line can lie.", jig.PrintToleranceMm);
        var cut = Millimetres("--cut-tolerance-mm", "Half width of where a cut can lie beside its line.", jig.CutToleranceMm);
        var centring = Millimetres("--centring-tolerance-mm", "Half width of where the plate's centre can lie beside the stick's.", jig.CentringToleranceMm);
        var command = new Command(
            "jig",
            "Writes a jig with stops of known angle as SVG to scale, for the procedure angle-stops, and says how well its angles are known.\n\nCaution: mind fingers and eyes when cutting; never force the stick.\n\nExample: tarry stick jig --out jig.svg --radius-mm 8 --stem-mm 5")
        {
            output, stops, radius, stem, print, cut, centring,
        };
        command.SetAction(parsed =>
        {
            var wanted = new StopJig
            {
                Stops = parsed.GetValue(stops),
                RadiusMm = parsed.GetValue(radius),
                StemMm = parsed.GetValue(stem),
                PrintToleranceMm = parsed.GetValue(print),
                CutToleranceMm = parsed.GetValue(cut),
                CentringToleranceMm = parsed.GetValue(centring),
            };
            if (wanted.Broken() is { } broken)
            {
                throw new UsageException("This jig cannot be.", char.ToUpperInvariant(broken[0]) + broken[1..] + ".");
            }

            var file = parsed.GetRequiredValue(output);
            WholeFile.Write(file, writer => writer.Write(StopJigDrawing.Svg(wanted)));
            terminal.Out.WriteLine($"{file}: print at 100 %, and check that its bar measures 100 mm.");
            terminal.Out.WriteLine(Invariant($"Standard uncertainty of a stop's angle: {wanted.UncertaintyDeg:0.00} degrees; state it with --stimulus-uncertainty {wanted.UncertaintyDeg:0.00}."));
            return ExitCode.Done;
        });
        return command;
    }

    private static Option<double> Millimetres(string name, string description, double usual) =>
        new Option<double>(name) { Description = description, DefaultValueFactory = _ => usual }.TakesNumber();
}
