using System.Globalization;
using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;

namespace Tarry.Benchmarks;

/// <summary>Made-up presses of two devices that report every 8 and every 4 ms, two sessions of 1,500 each, with a clock that strays.</summary>
internal sealed class PressTimes
{
    public const int Sessions = 2;

    public static readonly double[] NominalMs = [8, 4];

    private const double ClockError = 35e-6;

    private readonly (double[] Presses, double[] Latencies)[] sessions;

    public PressTimes(ulong seed) =>
        sessions = [.. Enumerable.Range(0, NominalMs.Length * Sessions).Select(part => Session(NominalMs[part / Sessions] * (1 + ClockError), SeededGenerator.ForPart(seed, (ulong)part)))];

    public IReadOnlyList<PressSeries> Of(int device) =>
        [.. Enumerable.Range(0, Sessions).Select(session => sessions[(device * Sessions) + session]).Select((session, number) => new PressSeries($"{number}", session.Presses, session.Latencies))];

    public void Write(string file) => File.WriteAllLines(
        file,
        sessions.SelectMany(session => session.Presses.Zip(session.Latencies, (press, latency) => string.Create(CultureInfo.InvariantCulture, $"{press:R} {latency:R}"))));

    private static (double[] Presses, double[] Latencies) Session(double slotMs, SeededGenerator generator)
    {
        var (presses, latencies) = (new double[Study.Trials], new double[Study.Trials]);
        var (at, phase) = (0.0, slotMs * generator.NextDouble());
        for (var i = 0; i < presses.Length; i++)
        {
            at += 150 + (100 * generator.NextDouble());
            presses[i] = Math.Round(at, 3);
            var slot = phase + (Math.Ceiling((at - phase) / slotMs) * slotMs);
            latencies[i] = Math.Round(slot - at + 5 + (4 * generator.NextDouble()) + (0.3 * generator.NextNormal()), 3);
        }

        return (presses, latencies);
    }
}
