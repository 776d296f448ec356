using System.Diagnostics;
using System.Globalization;
using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;
using Tarry.SlotGridSimulations;

// dotnet run -c Release --project benchmarks/Tarry.SlotGridSimulations -- FAMILY [RUNS] [SEED]
// Prints, for each case of a family, how often the report interval was found, wrong or refused, coverage, width and CPU time.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var family = args.Length > 0 ? args[0] : "plain";
var runs = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 20;
var seed = args.Length > 2 ? ulong.Parse(args[2], CultureInfo.InvariantCulture) : 1;
foreach (var (name, device) in Families.Of(family))
{
    var tally = new Tally(device);
    for (var run = 0; run < runs; run++)
    {
        var random = SeededGenerator.ForPart(seed, (ulong)run);
        var reference = device with { SlotMs = 1, SlotPpm = 0, SlotJitterMs = 0, RetryShare = 0, LumpShare = 0, LateShare = 0, MissedShare = 0, BeforeMs = 0.1, WanderPpm = 0 };
        var series = new List<PressSeries>();
        var references = new List<PressSeries>();
        foreach (var sitting in new[] { "one", "two" })
        {
            references.Add(reference.Session(sitting, random));
            series.Add(device.Session(sitting, random));
        }

        if (args.Length > 3)
        {
            CsvFile.Write(Path.Combine(args[3], $"{name.Replace(' ', '_')}-{run}.csv"), references, series);
        }

        var process = Process.GetCurrentProcess();
        var start = process.TotalProcessorTime;

        // Every other study states the reference's slots.
        double? slot = run % 2 == 0 ? 1 : null;
        var chain = ChainGrids.Of(references, slot);
        chain = chain.WithOwn(ReportIntervalSearch.Of(references, chain, slot));
        process.Refresh();
        var between = process.TotalProcessorTime;
        var outcome = ReportIntervalSearch.Of(series, chain);
        process.Refresh();
        tally.Add(outcome, (process.TotalProcessorTime - between).TotalMilliseconds, (between - start).TotalMilliseconds);
    }

    Console.WriteLine($"{name,-34} {tally}");
}
