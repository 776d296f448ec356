using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Metrology;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Benchmarks;

/// <summary>Ten minutes of a stick at 1,000 reports a second, at rest and along its gate, beside the same measures in NumPy and SciPy.</summary>
internal static class StickRecordingBenchmark
{
    private const int Positions = 600_000;
    private const int Half = 32_767;
    private const double WantedSeconds = 2;

    public static void Run()
    {
        var (rest, rim) = (Rest(), Rim());
        var (restFile, rimFile) = (Write(rest), Write(rim));
        Dictionary<string, (double Seconds, double Checksum)> baseline;
        try
        {
            baseline = Baseline.Run("/usr/bin/python3", "stick.py", restFile, rimFile);
        }
        finally
        {
            File.Delete(restFile);
            File.Delete(rimFile);
        }

        Console.WriteLine($"A stick, {Positions:N0} positions each, CPU seconds");
        Console.WriteLine($"{"recording",-12}{"cold",9}{"warm",9}{"baseline",10}   {"checksum",12}{"baseline",12}   below {WantedSeconds} s");
        Print("rest", rest, finding => Value(finding, StickMeasure.CentreOffset, StickPart.X) + Value(finding, StickMeasure.RestNoise, StickPart.X), baseline);
        Print("turns", rim, finding => Value(finding, StickMeasure.CircleRadius, StickPart.Whole) + Value(finding, StickMeasure.GainDifference, StickPart.Whole), baseline);
        Console.WriteLine("Ours: every measure of the procedure with its interval, faults, spectrum and figures' data. Baseline: centre, noise, drift and spectrum; circle and ellipse by turn.");
    }

    private static void Print(string name, StickSession session, Func<StickFinding, double> checksum, Dictionary<string, (double Seconds, double Checksum)> baseline)
    {
        var (cold, warm, sum) = ProcessorTime.ColdAndWarm(() => checksum(StickFindings.Of([], [session])!.Conditions[0]));
        var other = baseline.GetValueOrDefault(name);
        Console.WriteLine($"{name,-12}{cold,9:0.0000}{warm,9:0.0000}{other.Seconds,10:0.0000}   {sum,12:0.00000}{other.Checksum,12:0.00000}   {(cold < WantedSeconds ? "yes" : "no")}");
    }

    private static double Value(StickFinding finding, StickMeasure measure, StickPart part) => finding.Estimate(measure, part)!.Value;

    private static StickSession Rest() => Session(StickProcedure.Rest, (_, random) => (1.2 + (0.3 * random.NextNormal()), -0.5 + (0.3 * random.NextNormal())));

    private static StickSession Rim() => Session(StickProcedure.RimSweep, (index, random) =>
    {
        const int turn = 6_000;
        var along = index < Positions / 2 ? index : Positions - index;
        var angle = 2 * Math.PI * along / turn;
        return ((92 * Math.Cos(angle)) + (0.3 * random.NextNormal()), (90 * Math.Sin(angle)) + (0.3 * random.NextNormal()));
    });

    private static StickSession Session(StickProcedure procedure, Func<int, SeededGenerator, (double X, double Y)> percent)
    {
        var random = new SeededGenerator(3);
        var (ticks, x, y) = (new long[Positions], new double[Positions], new double[Positions]);
        for (var i = 0; i < Positions; i++)
        {
            var (atX, atY) = percent(i, random);
            (ticks[i], x[i], y[i]) = (1_000L * i, Math.Round(atX / 100 * Half), Math.Round(atY / 100 * Half));
        }

        var range = new StickRange(-Half, Half, 1);
        return new StickSession(
            new SessionRecord
            {
                Key = new SessionKey("one", "pad", procedure),
                Segments = [new Segment(null, 0, 1_000_000, null)],
                Stick = new StickSetup { Procedure = procedure, Source = "csv", X = range, Y = range },
            },
            new StickSamples(ticks, x, y));
    }

    private static string Write(StickSession session)
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".txt");
        using var writer = new StreamWriter(file);
        for (var i = 0; i < session.Samples.Count; i++)
        {
            writer.WriteLine($"{session.Samples.X[i]} {session.Samples.Y[i]}");
        }

        return file;
    }
}
