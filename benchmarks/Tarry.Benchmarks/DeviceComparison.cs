namespace Tarry.Benchmarks;

/// <summary>Prints the device part beside NumPy and SciPy, step by step, and whether it takes a fiftieth of their time.</summary>
internal static class DeviceComparison
{
    private const double Wanted = 50;
    private const string ByHand = " by hand";

    public static void Run()
    {
        var (study, presses) = (new Study(seed: 1), new PressTimes(seed: 2));
        var folder = Directory.CreateTempSubdirectory("tarry-benchmark-").FullName;
        try
        {
            var (latencies, times) = (Path.Combine(folder, "latencies"), Path.Combine(folder, "presses"));
            study.Write(latencies);
            presses.Write(times);
            Print(new DeviceAnalysis(study, presses), Baseline.Run("/usr/bin/python3", "device.py", latencies, times));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Print(DeviceAnalysis ours, Dictionary<string, (double Seconds, double Checksum)> baseline)
    {
        Console.WriteLine($"Device part, {DeviceAnalysis.Conditions.Length} of {Study.Conditions} conditions x {Study.Sessions} sessions x {Study.Trials} trials (line spectrum: {PressTimes.NominalMs.Length} x {PressTimes.Sessions} x {Study.Trials}), CPU seconds");
        Console.WriteLine($"{"step",-24}{"cold",9}{"warm",9}{"baseline",10}{"ratio",8}{"cold",8}   {"checksum",12}{"baseline",12}   {Wanted} times less");
        var totals = new Total();
        foreach (var (step, run) in ours.Steps)
        {
            var (cold, warm, checksum) = ProcessorTime.ColdAndWarm(run);
            foreach (var name in new[] { step, step + ByHand })
            {
                if (baseline.TryGetValue(name, out var other))
                {
                    Line(name, cold, warm, other.Seconds, $"{checksum,12:0.0000}{other.Checksum,12:0.0000}");
                }
            }

            var plain = baseline.GetValueOrDefault(step).Seconds;
            totals = totals.With(step, cold, warm, plain, baseline.TryGetValue(step + ByHand, out var hand) ? hand.Seconds : plain);
        }

        totals.Print(Line);
        Console.WriteLine(
            """
            Plain rows: SciPy's own functions. "By hand": the same method as here, written out in NumPy.
            line spectrum   scipy.signal.lombscargle over a twentieth of 50-1,400 Hz, times 20; ours also judges the line, its interval and phases.
            shape fits      scipy.optimize.minimize (BFGS) of the exact likelihood, six families, the starts of ours.
            deconvolution   numpy.convolve, the same stopping rule, 60 resamples; folds and resamples drawn by another generator.
            play            a function of the sample called anew for each of 100 resamples; by hand with all that resamples share made once.
            intervals       the same question by another method: percentiles of 10,000 resamples of trials, ours by t over sessions and
                            order statistics. Resampling trials takes no account of sessions: limits agree only roughly.
            """);
    }

    private static void Line(string name, double cold, double warm, double baseline, string checksums) => Console.WriteLine(
        $"{name,-24}{cold,9:0.0000}{warm,9:0.0000}{baseline,10:0.0000}{baseline / warm,8:0.0}{baseline / cold,8:0.0}   {checksums,24}   {(baseline >= Wanted * warm ? "yes" : "no")}{(baseline >= Wanted * cold ? "" : baseline >= Wanted * warm ? ", cold no" : "")}");

    private readonly record struct Total(double Cold, double Warm, double Plain, double Hand, double OthersCold, double OthersWarm, double OthersHand)
    {
        private const string OtherMethod = "intervals";

        public Total With(string step, double cold, double warm, double plain, double hand)
        {
            var sum = this with { Cold = Cold + cold, Warm = Warm + warm, Plain = Plain + plain, Hand = Hand + hand };
            return step == OtherMethod ? sum : sum with { OthersCold = OthersCold + cold, OthersWarm = OthersWarm + warm, OthersHand = OthersHand + hand };
        }

        public void Print(Action<string, double, double, double, string> line)
        {
            line("total", Cold, Warm, Plain, "");
            line("total by hand", Cold, Warm, Hand, "");
            line("  without intervals", OthersCold, OthersWarm, OthersHand, "");
        }
    }
}
