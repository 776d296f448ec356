using Tarry.Findings;
using Tarry.Findings.Comparisons;
using Tarry.Metrology;
using Tarry.Reports.Figures;
using Tarry.Reports.Wording;

namespace Tarry.Web.Comparing;

/// <summary>All pairs of a study, each once, in the order of the standing: a row a condition, a column each condition above it.</summary>
/// <param name="Columns">The conditions of the columns.</param>
/// <param name="Rows">The conditions of the rows, each with its cells.</param>
public sealed record VerdictMatrix(IReadOnlyList<string> Columns, IReadOnlyList<(string Id, IReadOnlyList<MatrixCell> Cells)> Rows)
{
    /// <summary>What the signs mean, those that occur.</summary>
    public IReadOnlyList<(string Sign, string Meaning)> Key { get; private init; } = [];

    /// <summary>Makes it.</summary>
    public static VerdictMatrix Of(FindingsDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        List<string> ids = [.. RankedRow.Of(document).Select(row => row.Condition.Id)];
        var pairs = document.Comparisons
            .SelectMany(pair => new[] { pair, pair.Swapped() })
            .ToDictionary(pair => (pair.A, pair.B));
        List<(string, IReadOnlyList<MatrixCell>)> rows = [.. ids.Skip(1).Select((id, index) => (
            id,
            (IReadOnlyList<MatrixCell>)[.. ids.Take(index + 1).Select(other => Cell(id, other, pairs.GetValueOrDefault((id, other))))]))];
        var kinds = rows.SelectMany(row => row.Item2).Select(cell => cell.Kind).ToHashSet(StringComparer.Ordinal);
        return new VerdictMatrix([.. ids.SkipLast(1)], rows) { Key = [.. Meanings.Where(meaning => kinds.Contains(meaning.Kind)).Select(meaning => (meaning.Sign, meaning.Meaning))] };
    }

    private static readonly (string Kind, string Sign, string Meaning)[] Meanings =
    [
        ("told", "+1.2", "told apart: how many ms the row is slower than the column"),
        ("below", "<", "told apart, by less than the margin"),
        ("same", "=", "no difference that matters"),
        ("undecided", "?", "undecided"),
        ("refused", "!", "refused: what a verdict would rest on is undone"),
        ("none", "\u00B7", "cannot be compared"),
    ];

    private static MatrixCell Cell(string id, string other, ComparisonFinding? pair)
    {
        if (pair?.Difference is not Estimate<LatencyDifference> difference)
        {
            return new(id, other, "\u00B7", "none", $"{id} against {other}: cannot be compared");
        }

        var kind = pair.IsRefused ? "refused" : pair.Verdict switch
        {
            Verdict.Slower or Verdict.Faster => "told",
            Verdict.BelowMargin => "below",
            Verdict.NoDifferenceThatMatters => "same",
            _ => "undecided",
        };
        var milliseconds = difference.Value.Milliseconds;
        var sign = kind == "told"
            ? Numbers.Fixed(milliseconds, Math.Abs(milliseconds) < 0.95 ? 2 : 1, withPlus: true)
            : Meanings.First(meaning => meaning.Kind == kind).Sign;
        return new(id, other, sign, kind, $"{id} against {other}: {VerdictSentence.InBrief(pair)}, {EstimateWording.Value(difference, Quantity.Difference)}\u00A0ms ({EstimateWording.Bounds(difference, Quantity.Difference)})");
    }
}
