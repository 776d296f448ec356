using System.Globalization;
using Tarry.Metrology;

namespace Tarry.Benchmarks;

/// <summary>A made-up study: 24 conditions x 4 sessions x 1,500 trials, latencies in milliseconds.</summary>
internal sealed class Study
{
    public const int Conditions = 24;
    public const int Sessions = 4;
    public const int Trials = 1500;

    public Study(ulong seed)
    {
        for (var condition = 0; condition < Conditions; condition++)
        {
            for (var session = 0; session < Sessions; session++)
            {
                var generator = SeededGenerator.ForPart(seed, (ulong)((condition * Sessions) + session));
                var offset = 6 + (0.05 * condition) + (0.15 * generator.NextNormal());
                var values = new double[Trials];
                for (var i = 0; i < Trials; i++)
                {
                    var late = generator.NextDouble() < 0.01 ? 10 * generator.NextDouble() : 0;
                    var latency = offset + ((1 + (condition % 8)) * generator.NextDouble()) + (4 * generator.NextDouble()) + (0.3 * generator.NextNormal()) + late;
                    values[i] = Math.Round(latency, 3);
                }

                InOrder[(condition * Sessions) + session] = values;
            }
        }
    }

    /// <summary>The trials of each session, the sessions of a condition beside each other.</summary>
    public double[][] InOrder { get; } = new double[Conditions * Sessions][];

    public double[] All(int condition) => [.. Enumerable.Range(condition * Sessions, Sessions).SelectMany(session => InOrder[session])];

    public void Write(string file) =>
        File.WriteAllLines(file, InOrder.SelectMany(session => session).Select(value => value.ToString("R", CultureInfo.InvariantCulture)));
}
