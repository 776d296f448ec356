using System.Globalization;
using Tarry.Benchmarks;

// Without an argument: the statistics and the device part beside R, NumPy and SciPy, then the cost of more trials. One of
// "statistics", "device", "growth", "stick" or "recordings [MEGABYTES]" for that alone.
// Prints CPU seconds of each step, ours cold (first call, compilation included) and warm (median of 25), beside R and
// SciPy where they are installed. The checksums show that all compute the same; see the notes below the table.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["recordings", .. var sizes])
{
    Recordings.Run(sizes is [var size, ..] ? int.Parse(size, CultureInfo.InvariantCulture) : 1_000);
    return;
}

if (args is ["device"])
{
    DeviceComparison.Run();
    return;
}

if (args is ["stick"])
{
    StickRecordingBenchmark.Run();
    return;
}

if (args is ["growth"])
{
    Growth.Run();
    return;
}

var study = new Study(seed: 1);
var data = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".txt");
study.Write(data);
Dictionary<string, (double Seconds, double Checksum)> r, sciPy;
try
{
    r = Baseline.Run("Rscript", "baseline.R", data);
    sciPy = Baseline.Run("/usr/bin/python3", "baseline.py", data);
}
finally
{
    File.Delete(data);
}

Console.WriteLine($"{Study.Conditions} conditions x {Study.Sessions} sessions x {Study.Trials} trials, CPU seconds");
Console.WriteLine($"{"step",-22}{"cold",9}{"warm",9}{"R",9}{"SciPy",9}   {"checksum",16}{"R",16}{"SciPy",16}");
var totals = new double[4];
foreach (var (step, run) in new OurAnalysis(study).Steps)
{
    var (cold, warm, checksum) = ProcessorTime.ColdAndWarm(run);
    var (inR, inSciPy) = (r.GetValueOrDefault(step), sciPy.GetValueOrDefault(step));
    Console.WriteLine($"{step,-22}{cold,9:0.0000}{warm,9:0.0000}{inR.Seconds,9:0.0000}{inSciPy.Seconds,9:0.0000}   {checksum,16:G10}{inR.Checksum,16:G10}{inSciPy.Checksum,16:G10}");
    totals = [totals[0] + cold, totals[1] + warm, totals[2] + inR.Seconds, totals[3] + inSciPy.Seconds];
}

Console.WriteLine($"{"total",-22}{totals[0],9:0.0000}{totals[1],9:0.0000}{totals[2],9:0.0000}{totals[3],9:0.0000}");
Console.WriteLine("Densities: R interpolates a coarser grid and stops its bandwidth search early; SciPy has only the normal-reference bandwidth.");
if (args is ["statistics"])
{
    return;
}

Console.WriteLine();
DeviceComparison.Run();
Console.WriteLine();
Growth.Run();
