using System.Xml.Linq;
using Tarry.Findings.Plans;
using Tarry.Reports.Documents;

namespace Tarry.Reports.Tests.Documents;

public class OrderSheetTests
{
    private static readonly PlannedRuns Runs = new("my pads", "/dev/ttyACM0", "light", 400);

    [Fact]
    public void Write_Order_HasAPageASittingWithBoxesCommandsAndCare()
    {
        var plan = Plan("Pads <&>");
        var order = RunOrder.Draw(plan.Conditions, 3, [], 1);
        var html = XElement.Parse(OrderSheet.Write(plan, order, Runs).Split('\n', 2)[1]);

        var pages = html.Descendants("section").ToList();
        Assert.Equal(3, pages.Count);
        Assert.Equal(3 * 2, html.Descendants("span").Count(box => box.Value == "\u2610"));
        Assert.Equal(
            order.SelectMany(sitting => sitting.Runs.Select(run => Runs.Command(sitting, run))),
            html.Descendants("code").Select(code => code.Value));
        Assert.All(pages, page =>
        {
            foreach (var word in new[] { "Lithium", "Soldering", "5 V on a 3.3 V pad", "photosensitive epilepsy", "qualified" })
            {
                Assert.Contains(word, page.Value, StringComparison.Ordinal);
            }
        });
        Assert.Contains("Pads <&>", html.Descendants("h1").Single().Value, StringComparison.Ordinal);
    }

    // RFC 4180: quotes around a field are doubled within it.
    [Fact]
    public void OrderTable_StudyWithASpace_QuotesTheCommand()
    {
        var plan = Plan("Pads");
        using var writer = new StringWriter();
        OrderTable.Write(writer, plan, [new("sitting-1", [new(1, "ref", 7)])], Runs);

        Assert.Equal(
            "sitting,step,condition,is_reference,trials,seed,command\r\n"
            + "sitting-1,1,ref,true,400,7,\"tarry run \"\"my pads\"\" --condition ref --sitting sitting-1 --port /dev/ttyACM0 --response light --trials 400 --seed 7\"\r\n",
            writer.ToString());
    }

    private static StudyPlan Plan(string title) => StudyPlanner.Of(
        Samples.Document(title, []) with { Title = title, Reference = "ref" },
        ["ref", "pad"],
        new PlanRequest { Kind = PlanGoalKind.Difference });
}
