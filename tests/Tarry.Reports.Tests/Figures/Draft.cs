using Tarry.Reports.Figures;
namespace Tarry.Reports.Tests.Figures;
public sealed class DraftTests
{
    [Fact]
    public void Write()
    {
        var d = Samples.TwelveConditions();
        File.WriteAllText("/tmp/shots/report.html", Tarry.Reports.Documents.ReportDocument.Write(d));
        foreach (var s in new[] { FigureStyle.Page, FigureStyle.Phone, FigureStyle.Video })
        {
            File.WriteAllText($"/tmp/shots/standing-{s.Name}.svg", StandingFigure.Draw(d, s));
            File.WriteAllText($"/tmp/shots/ridge-{s.Name}.svg", RidgeFigure.Draw(d, s));
        }
    }
}
