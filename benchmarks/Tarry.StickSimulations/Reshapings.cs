using Tarry.Findings.Sticks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Reshaping;
using Tarry.Findings.Tests.Sticks;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.StickSimulations;

/// <summary>A layer that makes a dead zone, saturates and bends, beside the same stick without it.</summary>
internal static class Reshapings
{
    private const double Zone = 10;
    private const double Saturation = 90;
    private const double Exponent = 1.5;

    public static void Print(IReadOnlyList<(int Steps, double Noise, double RateHz)> qualities, int runs)
    {
        foreach (var (steps, noise, rate) in qualities)
        {
            foreach (var held in new[] { false, true })
            {
                var plain = new FaultyStick { Steps = steps, Noise = noise, RateHz = rate };
                var layered = plain with { DeadZone = Zone, Saturation = Saturation, Exponent = Exponent };
                var findings = new ReshapingFinding[runs];
                var none = 0;
                Parallel.For(0, runs, run =>
                {
                    findings[run] = Find(plain, layered, (ulong)run, held);
                    var same = Find(plain, plain, (ulong)run, held);
                    Interlocked.Add(ref none, same.Kinds.Count == 0 ? 0 : 1);
                });
                Print("dead zone", findings, finding => finding.DeadZone, Zone);
                Print("saturation", findings, finding => finding.Saturation, Saturation);
                Print("exponent", findings, finding => finding.Exponent, Exponent);
                Console.WriteLine($"  told without a layer {none}");

                void Print(string name, ReshapingFinding[] all, Func<ReshapingFinding, StickOutcome> of, double truth)
                {
                    var found = all.Select(of).OfType<StickEstimate>().ToList();
                    Console.WriteLine($"{name,-10} {(held ? "stairs" : "sweeps")} {steps,5} {noise,4} {rate,5} covered {found.Count(one => one.Low <= truth && truth <= one.High)} of {found.Count} bias {found.Average(one => one.Value) - truth:0.00000} half {found.Average(one => (one.High - one.Low) / 2):0.00000}");
                }
            }
        }
    }

    private static ReshapingFinding Find(FaultyStick without, FaultyStick with, ulong run, bool held)
    {
        StickSession Record(FaultyStick stick, ulong seed, string condition) => held ? stick.Stairs(seed, condition: condition) : stick.Sweeps(seed, condition: condition);
        return StickFindings.Of([Entry("plain", "none"), Entry("bent", "bender")], [Record(without, (2 * run) + 1, "plain"), Record(with, (2 * run) + 2, "bent")])!.Reshapings[0];
    }

    private static ConditionEntry Entry(string id, string layer) => new() { Id = id, Factors = new Dictionary<string, string> { ["device"] = "pad", ["layer"] = layer } };
}
