using Tarry.Findings;
using Tarry.Reports.Tests;
using Tarry.Reports.Wording;
using Tarry.Web.Comparing;

namespace Tarry.Web.Tests.Comparing;

public sealed class VerdictMatrixTests
{
    private static readonly FindingsDocument Document = Samples.TwelveConditions();

    [Fact]
    public void Of_TwelveConditions_HasEveryPairOnceWithItsVerdict()
    {
        var matrix = VerdictMatrix.Of(Document);
        var cells = matrix.Rows.SelectMany(row => row.Cells).ToList();
        Assert.Equal(12 * 11 / 2, cells.Count);
        Assert.Equal(cells.Count, cells.Select(cell => string.CompareOrdinal(cell.A, cell.B) < 0 ? (cell.A, cell.B) : (cell.B, cell.A)).Distinct().Count());
        Assert.All(cells, cell => Assert.Contains(VerdictSentence.InBrief(ComparisonView.Find(Document, cell.A, cell.B)!), cell.Words, StringComparison.Ordinal));
        Assert.All(matrix.Rows.Select((row, index) => (row, index)), entry => Assert.Equal(matrix.Columns.Take(entry.index + 1), entry.row.Cells.Select(cell => cell.B)));
    }

    [Fact]
    public void Key_OfTheMatrix_ExplainsEverySignThatOccurs()
    {
        var matrix = VerdictMatrix.Of(Document);
        var signs = matrix.Rows.SelectMany(row => row.Cells).Where(cell => cell.Kind != "told").Select(cell => cell.Sign).Distinct();
        Assert.Subset(matrix.Key.Select(entry => entry.Sign).ToHashSet(), signs.ToHashSet());
    }

    [Fact]
    public void Of_OneCondition_IsEmpty() => Assert.Empty(VerdictMatrix.Of(Samples.Document("One", [Samples.Condition("a", 3, 1)])).Rows);
}
