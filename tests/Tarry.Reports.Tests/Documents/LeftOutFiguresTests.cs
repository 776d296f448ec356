using Tarry.Reports.Documents;
using Tarry.Reports.Figures;
using Tarry.Reports.Tests.Figures;

namespace Tarry.Reports.Tests.Documents;

public class LeftOutFiguresTests
{
    [Fact]
    public void Report_WithoutSomeFigures_HasTheOthers()
    {
        var study = FigureTests.Studies["twelve"];
        var report = ReportDocument.Write(study, new ReportPreface(null, null, new HashSet<string> { "ridge", "ladder" }));
        foreach (var figure in StudyFigures.Of(study).Where(figure => figure.Part == FigurePart.Latencies))
        {
            Assert.Equal(figure.Name is not ("ridge" or "ladder"), report.Contains(figure.Caption, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Report_WithoutAnyFigure_HasItsTables()
    {
        var study = FigureTests.Studies["twelve"];
        var report = ReportDocument.Write(study, new ReportPreface(null, null, StudyFigures.Of(study).Select(figure => figure.Name).ToHashSet()));
        Assert.DoesNotContain("<figure", report, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"figures\"", report, StringComparison.Ordinal);
        Assert.Contains("id=\"results\"", report, StringComparison.Ordinal);
    }
}
