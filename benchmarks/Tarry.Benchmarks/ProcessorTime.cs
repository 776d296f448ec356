namespace Tarry.Benchmarks;

/// <summary>Processor time of this process, all its threads together, to the microsecond.</summary>
internal static class ProcessorTime
{
    private const int Repetitions = 25;

    public static (double Seconds, double Checksum) Of(Func<double> run)
    {
        var before = Environment.CpuUsage.TotalTime;
        var checksum = run();
        return ((Environment.CpuUsage.TotalTime - before).TotalSeconds, checksum);
    }

    /// <summary>The first call, compilation included, and the median of 25 more.</summary>
    public static (double Cold, double Warm, double Checksum) ColdAndWarm(Func<double> run)
    {
        var (cold, checksum) = Of(run);
        return (cold, Enumerable.Range(0, Repetitions).Select(_ => Of(run).Seconds).Order().ElementAt(Repetitions / 2), checksum);
    }
}
