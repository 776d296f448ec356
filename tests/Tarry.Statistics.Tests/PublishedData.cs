using System.Globalization;

namespace Tarry.Statistics.Tests;

/// <summary>Published data sets.</summary>
internal static class PublishedData
{
    /// <summary>NIST StRD univariate, Lew.dat: beam deflections, 200 values, public domain.</summary>
    public static double[] Lew { get; } = Read("nist-lew.txt");

    /// <summary>NIST StRD univariate, Mavro.dat: filter transmittance, 50 values, public domain.</summary>
    public static double[] Mavro { get; } = Read("nist-mavro.txt");

    /// <summary>NIST StRD univariate, Michelso.dat less 299 times 1000 (R's morley$Speed): 100 speeds of light, public domain.</summary>
    public static double[] Michelson { get; } = Read("nist-michelson.txt");

    /// <summary>NIST/SEMATECH e-Handbook GEAR.DAT: gear diameters, ten batches of ten, public domain.</summary>
    public static double[] Gear { get; } = Read("nist-gear.txt");

    /// <summary>Student's sleep data, first drug ("Student", Biometrika 6, 1908; R's sleep$extra[1:10]).</summary>
    public static double[] SleepFirst { get; } = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];

    /// <summary>Student's sleep data, second drug (R's sleep$extra[11:20]).</summary>
    public static double[] SleepSecond { get; } = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

    /// <summary>Both drugs.</summary>
    public static double[] Sleep { get; } = [.. SleepFirst, .. SleepSecond];

    public static double[] Sorted(double[] values)
    {
        var sorted = (double[])values.Clone();
        Array.Sort(sorted);
        return sorted;
    }

    private static double[] Read(string name)
    {
        using var stream = typeof(PublishedData).Assembly.GetManifestResourceStream($"Tarry.Statistics.Tests.Data.{name}")!;
        using var reader = new StreamReader(stream);
        return [.. reader.ReadToEnd()
            .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .Select(text => double.Parse(text, CultureInfo.InvariantCulture))];
    }
}
