using System.Globalization;
using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.StickSimulations;

// dotnet run -c Release --project benchmarks/Tarry.StickSimulations -- [CASE|all] [RUNS] [STEPS]
// Prints, for each fault crossed with steps, noise, report rate and sittings, how often the interval holds the truth, and by what it misses.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var chosen = args.Length > 0 ? args[0] : "all";
var runs = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 100;
var only = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 0;
(int Steps, double Noise, double RateHz)[] qualities = [(65_535, 0.1, 500), (4_096, 0.1, 1_000), (1_024, 0.2, 125), (1_024, 0, 250), (256, 0.3, 250), (256, 0.05, 500), (256, 0, 1_000)];
if (chosen == "reshaping")
{
    Reshapings.Print(qualities, runs);
    return;
}

foreach (var one in Families.All().Where(one => chosen == "all" || one.Name == chosen))
{
    foreach (var (steps, noise, rate) in qualities.Where(quality => only == 0 || quality.Steps == only))
    {
        foreach (var sittings in new[] { 1, 3 })
        {
            var stick = one.Stick with { Steps = steps, Noise = noise, RateHz = rate };
            var findings = new StickFinding[runs];
            Parallel.For(0, runs, run => findings[run] = StickFindings.Of(
                [],
                [.. Enumerable.Range(0, sittings).SelectMany(sitting => one.Record(stick, (ulong)((run * 3) + sitting + 1), $"s{sitting}"))])!.Conditions[0]);
            foreach (var truth in one.Truths.Select(truth => double.IsNaN(truth.Value) ? truth with { Value = noise } : truth))
            {
                var found = findings.Select(finding => finding.Estimate(truth.Measure, truth.Part)).OfType<StickEstimate>().ToList();
                if (found.Count == 0)
                {
                    Console.WriteLine($"{one.Name,-14} {steps,5} {noise,4} {rate,5} {sittings} {truth.Measure,-18}{truth.Part,-6} refused in all: {(findings[0].Of(truth.Measure, truth.Part) as StickRefusal)?.Reason}");
                    continue;
                }

                var covered = found.Count(estimate => estimate.Low <= truth.Value && truth.Value <= estimate.High) / (double)found.Count;
                var bias = found.Average(estimate => estimate.Value) - truth.Value;
                var rms = Math.Sqrt(found.Average(estimate => Math.Pow(estimate.Value - truth.Value, 2)));
                var half = found.Average(estimate => (estimate.High - estimate.Low) / 2);
                var falsely = truth.Value == 0 ? findings.Count(finding => finding.Faults.Any(fault => fault.Measure == truth.Measure && fault.Part == truth.Part)) : -1;
                Console.WriteLine($"{one.Name,-14} {steps,5} {noise,4} {rate,5} {sittings} {truth.Measure,-18}{truth.Part,-6} covered {covered,5:0.000} of {found.Count,3} bias {bias,9:0.00000} rms {rms,8:0.00000} half {half,8:0.00000}{(falsely >= 0 ? $" accused {falsely}" : "")}{(covered < 0.9 ? "  <<<" : "")}");
            }
        }
    }
}
