using System.Globalization;
using Tarry.Findings;
using Tarry.Imports.DelimitedText;
using Tarry.Metrology;

namespace Tarry.Benchmarks;

/// <summary>What the whole analysis of a study costs as its trials grow: read from its folder, all findings made.</summary>
internal static class Growth
{
    private const int Conditions = 6;
    private const int Sittings = 3;
    private const int Runs = 3;
    private static readonly int[] TrialsPerSession = [500, 2_000, 8_000];

    public static void Run()
    {
        var folder = Directory.CreateTempSubdirectory("tarry-benchmark-").FullName;
        try
        {
            // The first analysis compiles; it is done and left aside.
            Seconds(Make(folder, 300));
            Console.WriteLine($"Whole analysis of a study, {Conditions} conditions x {Sittings} sittings, CPU seconds (median of {Runs}, warm)");
            Console.WriteLine($"{"trials a session",-18}{"trials",9}{"CPU s",9}{"us/trial",10}{"cost",8}{"trials",8}");
            double? first = null;
            foreach (var trials in TrialsPerSession)
            {
                var study = Make(folder, trials);
                var seconds = Enumerable.Range(0, Runs).Select(_ => Seconds(study)).Order().ElementAt(Runs / 2);
                first ??= seconds;
                var all = trials * Conditions * Sittings;
                Console.WriteLine($"{trials,-18}{all,9}{seconds,9:0.000}{seconds / all * 1e6,10:0.0}{seconds / first,7:0.0}x{trials / TrialsPerSession[0],7}x");
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static double Seconds(Studies.Study study) =>
        ProcessorTime.Of(() => StudyAnalysis.Run(study, seed: 1, version: "benchmark").Conditions.Count).Seconds;

    private static Studies.Study Make(string folder, int trials)
    {
        var table = Path.Combine(folder, $"{trials}.csv");
        File.WriteAllLines(table, Rows(trials));
        var study = Studies.Study.Create(Path.Combine(folder, $"{trials}"), "Growth", "bench-board", 0.5);
        using var held = study.AcquireLock("benchmark");
        foreach (var plan in DelimitedTextImport.Read([table], new DelimitedTextOptions(), []))
        {
            plan.AddTo(study, held);
        }

        return study;
    }

    // Slots of 1, 2, 4 and 8 ms in front of frames of 4.1 ms.
    private static IEnumerable<string> Rows(int trials)
    {
        yield return "condition,sitting,seq,press_time_us,latency_us,outcome,nominal_report_hz";
        for (var session = 0; session < Conditions * Sittings; session++)
        {
            var (condition, sitting) = (session % Conditions, session / Conditions);
            var generator = SeededGenerator.ForPart(1, (ulong)session);
            var name = condition == 0 ? "bench-board" : $"pad-{condition}";
            var slotMs = condition == 0 ? 1.0 : 1 << (condition % 4);
            var (slotPhase, framePhase, at) = (slotMs * generator.NextDouble(), 4.1 * generator.NextDouble(), 0.0);
            var fixedMs = 1 + (0.3 * condition) + (0.1 * generator.NextNormal());
            for (var trial = 1; trial <= trials; trial++)
            {
                at += 150 + (100 * generator.NextDouble());
                var sent = Next(at + fixedMs, slotMs * (1 + 35e-6), slotPhase);
                var seen = Next(sent, 4.1 * (1 - 20e-6), framePhase) + 5 + (0.12 * generator.NextNormal());
                yield return string.Create(CultureInfo.InvariantCulture, $"{name},s{sitting},{trial},{at * 1000:0},{(seen - at) * 1000:0},response,{1000 / slotMs:0.###}");
            }
        }

        static double Next(double from, double interval, double phase) => phase + (Math.Ceiling((from - phase) / interval) * interval);
    }
}
