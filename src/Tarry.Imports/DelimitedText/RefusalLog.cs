using Tarry.Studies.Sessions;

namespace Tarry.Imports.DelimitedText;

/// <summary>Counts the refused rows of a file by kind of reason and keeps the first of them.</summary>
internal sealed class RefusalLog
{
    private const int LongestList = 1_000;
    private readonly Dictionary<RowProblem, long> counts = [];
    private readonly List<RefusedItem> items = [];

    public IReadOnlyList<RefusedItem> Items => items;

    /// <summary>The counts by reason in words, the most frequent first.</summary>
    public IReadOnlyDictionary<string, long> ByReason =>
        counts.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key).ToDictionary(pair => RowProblems.Describe(pair.Key), pair => pair.Value);

    public void Add(RowProblem problem, RefusedItem item)
    {
        counts[problem] = counts.GetValueOrDefault(problem) + 1;
        if (items.Count < LongestList)
        {
            items.Add(item);
        }
    }
}
