using Tarry.Findings.Comparisons;
using Tarry.Findings.Quality;
using Tarry.Findings.Tests.Simulation;

namespace Tarry.Findings.Soak;

/// <summary>How often a study says what is so.</summary>
internal static class DetectionRates
{
    public static void OfFaults(int studies, string word)
    {
        Console.WriteLine($"One condition of eight is at fault in each of its three sessions, {studies} studies: share of its sessions with the caution, and of studies, %");
        foreach (var (name, (fault, kinds)) in SimulatedDesigns.Faults.Where(entry => entry.Key.Contains(word, StringComparison.Ordinal)))
        {
            int sessions = 0, caught = 0, others = 0, refused = 0;
            for (var study = 0; study < studies; study++)
            {
                var document = SimulatedStudy.Analyse(SimulatedDesigns.WithOne(fault), (ulong)(3_000_000 + study));
                var cautions = document.Conditions.SelectMany(condition => condition.Cautions).ToList();
                var of = cautions.Where(caution => kinds.Contains(caution.Kind) && caution.Subject.EndsWith("suspect", StringComparison.Ordinal)).Select(caution => caution.Subject).Distinct().Count();
                sessions += of;
                caught += of > 0 ? 1 : 0;
                others += FalseFindings.OfCautions(document).Any(caution => !caution.Subject.EndsWith("suspect", StringComparison.Ordinal)) ? 1 : 0;
                refused += document.Comparisons.Where(pair => pair.A == "suspect" || pair.B == "suspect").All(pair => pair.IsRefused) ? 1 : 0;
            }

            Console.WriteLine($"{100.0 * sessions / (3 * studies),6:0.0} {100.0 * caught / studies,6:0.0}  {name}; all its verdicts refused {100.0 * refused / studies:0.0}, another condition accused {100.0 * others / studies:0.0}");
        }
    }

    public static void OfLayers(int studies, string word)
    {
        Console.WriteLine($"A layer, margin 0.5 ms, {studies} studies: verdicts on its cost, %");
        foreach (var (name, design) in SimulatedDesigns.Layers.Where(entry => entry.Key.Contains(word, StringComparison.Ordinal)))
        {
            var verdicts = new SortedDictionary<string, int>();
            double needed = 0, said = 0;
            for (var study = 0; study < studies; study++)
            {
                var cost = SimulatedStudy.Analyse(design, (ulong)(4_000_000 + study)).Factors!.Single(factor => factor.Factor == "layer").Costs.Single();
                var verdict = cost.Verdict is { } made ? VerdictWording.Key(made) : "devices differ";
                verdicts[verdict] = verdicts.GetValueOrDefault(verdict) + 1;
                (needed, said) = cost.Needed is { } effort ? (needed + effort.Sittings, said + 1) : (needed, said);
            }

            Console.WriteLine($"{name}: {string.Join(", ", verdicts.Select(verdict => $"{verdict.Key} {100.0 * verdict.Value / studies:0.0}"))}{(said > 0 ? $"; where undecided it takes {needed / said:0.0} sittings on average" : "")}");
        }
    }
}
