using Tarry.Statistics.Alignment;
using Tarry.Statistics.Descriptives;
using Tarry.Statistics.Intervals;
using static System.FormattableString;

namespace Tarry.Imports.PacketCapture;

/// <summary>Presses of a rig and answers in a capture, whose clocks are related by a straight line: stated, which gives latencies, or found from the data, which gives how they differ from each other.</summary>
/// <param name="presses">The presses.</param>
/// <param name="answers">Times of answers since the capture's first packet, ascending, in seconds.</param>
/// <param name="fileName">The capture, for places.</param>
internal sealed class RelatedClocks(RigPresses presses, IReadOnlyList<double> answers, string fileName)
{
    private const double LateSeconds = 0.01;
    private readonly EventAlignment found = AlignmentSearch.Find(presses.Seconds, answers);

    /// <summary>The presses on the capture's clock, by a stated relation, in seconds since its first packet.</summary>
    /// <param name="offsetMs">When the rig's clock was at 0.</param>
    /// <param name="ratePpm">How much faster than the rig's the capture's clock runs.</param>
    /// <param name="notes">Takes what the user must know.</param>
    /// <exception cref="ImportException">By this relation answers came before their presses.</exception>
    public IEnumerable<double> ByStatement(double offsetMs, double ratePpm, ICollection<string> notes)
    {
        double OnCapture(double press) => (offsetMs / 1e3) + (press * (1 + (ratePpm / 1e6)));
        if (found.Kind == AlignmentKind.Found)
        {
            var middle = (presses.Seconds[0] + presses.Seconds[^1]) / 2;
            var typicalMs = 1e3 * (middle + found.OffsetSeconds + (found.RatePpm / 1e6 * (middle - presses.Seconds[0])) - OnCapture(middle));
            if (typicalMs < 0)
            {
                throw new ImportException(
                    Invariant($"With this offset the answers come {-typicalMs:0.000} ms before their presses."), fileName, "State the offset of the clocks as it was measured, or leave --clock-offset-ms out: then it is said how latencies differ, not how long they are.");
            }

            notes.Add(Invariant($"the events themselves give a rate of {found.RatePpm:0.0} ppm (standard uncertainty {found.RateUncertaintyPpm:0.0}) and put the middle latency at {typicalMs:0.000} ms by the stated offset; stated are {ratePpm:0.0} ppm"));
        }
        else
        {
            notes.Add($"the events themselves do not confirm the stated relation of the clocks: {Why(found.Kind)}");
        }

        notes.Add(Invariant($"presses are those of {presses.Name}; the clocks are related as stated ({offsetMs} ms, {ratePpm} ppm): every latency is wrong by what the offset is wrong, and its uncertainty is that of whoever stated it"));
        return presses.Seconds.Select(OnCapture);
    }

    /// <summary>What the data themselves say of the presses and answers, in words.</summary>
    public IEnumerable<string> ByData()
    {
        if (found.Kind != AlignmentKind.Found)
        {
            yield return $"the presses of {presses.Name} were not related to the reports: {Why(found.Kind)}";
            yield break;
        }

        var milliseconds = found.RelativeSeconds.Select(value => 1e3 * value).ToArray();
        yield return Invariant($"{milliseconds.Length} of {found.Presses} presses of {presses.Name} have their answer in the capture; its clock runs {found.RatePpm:+0.00;-0.00} ppm against the rig's (standard uncertainty {found.RateUncertaintyPpm:0.00}), in which a latency that grows steadily is hidden");
        if (DeviationInterval.Of(milliseconds) is { } limits)
        {
            yield return Invariant($"how long latencies are is not known, for the offset of the clocks holds them too; they differ by a standard deviation of {Moments.StandardDeviation(milliseconds):0.000} ms (95 % interval {limits.Low:0.000} to {limits.High:0.000} ms, n {milliseconds.Length}, 1 session)");
        }

        var late = milliseconds.Count(value => value > 1e3 * LateSeconds);
        var share = WilsonInterval.Of(late, milliseconds.Length);
        yield return Invariant($"{late} of {milliseconds.Length} came more than {1e3 * LateSeconds:0} ms later than the middle one: {100.0 * late / milliseconds.Length:0.00} % (95 % interval {100 * share.Low:0.00} to {100 * share.High:0.00} %)");
    }

    private static string Why(AlignmentKind kind) => kind switch
    {
        AlignmentKind.TooFewPresses => $"it takes {AlignmentSearch.FewestPresses} presses",
        AlignmentKind.SeveralMatches => "several relations of the clocks explain them equally well; let the rig press at random intervals, and name with --button the field that answers, since a release after a fixed hold looks like an answer",
        _ => "no relation of the clocks has an answer behind most of them; check that they are of the same run, and the field that answers (--button)",
    };
}
