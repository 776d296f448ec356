using Tarry.Findings.Quality;
using Tarry.Findings.Tests.Simulation;

namespace Tarry.Findings.Soak;

/// <summary>How often a study says what is not so.</summary>
internal static class ErrorRates
{
    public static void OfAlikeConditions(int studies, string word)
    {
        Console.WriteLine($"All conditions alike, {studies} studies: share with a false word, %");
        Console.WriteLine("comparisons  contrasts  costs  factors  any   design");
        foreach (var (name, design) in SimulatedDesigns.Null.Where(entry => entry.Key.Contains(word, StringComparison.Ordinal)))
        {
            int[] counts = new int[5];
            for (var study = 0; study < studies; study++)
            {
                var document = SimulatedStudy.Analyse(design, (ulong)(1_000_000 + study));
                bool[] found = [FalseFindings.InComparisons(document), FalseFindings.InContrasts(document), FalseFindings.InCosts(document)];
                counts[0] += found[0] ? 1 : 0;
                counts[1] += found[1] ? 1 : 0;
                counts[2] += found[2] ? 1 : 0;
                counts[3] += found[1] || found[2] ? 1 : 0;
                counts[4] += found.Contains(true) ? 1 : 0;
            }

            double Percent(int index) => 100.0 * counts[index] / studies;
            Console.WriteLine($"{Percent(0),11:0.0}  {Percent(1),9:0.0}  {Percent(2),5:0.0}  {Percent(3),7:0.0}  {Percent(4),4:0.0}  {name}");
        }
    }

    public static void OfCleanSessions(int studies, string word)
    {
        Console.WriteLine($"Clean sessions, {studies} studies: share accused, %");
        foreach (var (name, design) in SimulatedDesigns.Clean.Where(entry => entry.Key.Contains(word, StringComparison.Ordinal)))
        {
            var accused = 0;
            var kinds = new SortedDictionary<CautionKind, int>();
            for (var study = 0; study < studies; study++)
            {
                var found = FalseFindings.OfCautions(SimulatedStudy.Analyse(design, (ulong)(2_000_000 + study))).Select(caution => caution.Kind).Distinct().ToList();
                accused += found.Count > 0 ? 1 : 0;
                found.ForEach(kind => kinds[kind] = kinds.GetValueOrDefault(kind) + 1);
            }

            Console.WriteLine($"{100.0 * accused / studies,5:0.0}  {name}: {string.Join(", ", kinds.Select(kind => $"{CautionWording.Key(kind.Key)} {100.0 * kind.Value / studies:0.0}"))}");
        }
    }
}
