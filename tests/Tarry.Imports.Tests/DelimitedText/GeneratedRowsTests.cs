using System.Globalization;
using System.Text;
using Tarry.Imports.DelimitedText;
using Tarry.Metrology;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.DelimitedText;

/// <summary>Files that are generated together with what must come out of them.</summary>
public class GeneratedRowsTests
{
    private const string Header = "condition,sitting,seq,press_time_us,latency_us,outcome";

    [Fact]
    public void Read_GoodRowsAmongBadOnes_KeepsEveryGoodRowAndCountsEveryBadOne()
    {
        for (ulong seed = 1; seed <= 40; seed++)
        {
            var random = new SeededGenerator(seed);
            var rows = Generate(random, 200 + random.NextInt32(300));
            var bad = 0;
            var text = new StringBuilder(Header).Append('\n');
            var good = new Dictionary<(string, long), decimal>();
            for (var index = 0; index < rows.Count; index++)
            {
                var row = rows[index];
                // Each session's first row stays good, so that the session of every other row is known.
                if (row.Sequence > 1 && random.NextInt32(4) == 0)
                {
                    bad++;
                    text.Append(Spoil(row, random)).Append('\n');
                }
                else
                {
                    good.Add((row.Session, row.Sequence), row.LatencyUs);
                    text.Append(row.Text).Append('\n');
                }
            }

            var plan = Import(text.ToString());
            Assert.Equal((rows.Count, rows.Count - bad, bad), ((int)plan.Record.RowsRead, (int)plan.Record.RowsKept, (int)plan.Record.RefusedTotal));
            Assert.Equal(rows.Count, plan.Sessions.Sum(session => session.Trials.Count) + plan.Record.RefusedUnassigned);
            var kept = plan.Sessions.SelectMany(session => session.Trials.Where(trial => trial.Outcome == Outcome.Response)
                .Select(trial => KeyValuePair.Create((session.Record.Key.ToString(), trial.Sequence), trial.LatencyTicks!.Value * 1_000_000m / session.Record.Segments[trial.Segment].TickHz)));
            Assert.Equal(good.OrderBy(pair => pair.Key), kept.OrderBy(pair => pair.Key));
        }
    }

    [Fact]
    public void Read_RowsInAnyOrder_GivesTheSameTrials()
    {
        var random = new SeededGenerator(5);
        var rows = Generate(random, 500).Select(row => row.Text).ToArray();
        var sorted = Import(Header + "\n" + string.Join('\n', rows));
        for (var index = rows.Length - 1; index > 0; index--)
        {
            var other = random.NextInt32(index + 1);
            (rows[index], rows[other]) = (rows[other], rows[index]);
        }

        var shuffled = Import(Header + "\r\n" + string.Join("\r\n", rows) + "\r\n");
        Assert.Equal(sorted.Sessions.Select(session => session.Record.Key), shuffled.Sessions.Select(session => session.Record.Key));
        Assert.Equal(sorted.Sessions.SelectMany(session => session.Trials), shuffled.Sessions.SelectMany(session => session.Trials));
    }

    [Fact]
    public void Read_ManyRows_TakesLittleMemoryForEach()
    {
        const int Rows = 100_000;
        var random = new SeededGenerator(9);
        var text = Header + "\n" + string.Join('\n', Generate(random, Rows).Select(row => row.Text));
        using var folder = new TemporaryFolder();
        var path = folder.Write("rows.csv", text);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var plan = Assert.Single(DelimitedTextImport.Read([path], new DelimitedTextOptions(), [], cancellation: TestContext.Current.CancellationToken));
        // 1,000,000 rows are to import in less than 400 MB: less than 400 bytes allocated for each, kept or not.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, Rows, 400 * Rows);
        Assert.Equal(Rows, plan.Record.RowsKept);
    }

    private static List<Row> Generate(SeededGenerator random, int count)
    {
        var next = new Dictionary<string, long>();
        var rows = new List<Row>(count);
        for (var index = 0; index < count; index++)
        {
            var (condition, sitting) = ($"pad-{random.NextInt32(6)}", random.NextInt32(2) == 0 ? "monday" : "tuesday");
            var session = $"{sitting}.{condition}";
            var sequence = next[session] = next.GetValueOrDefault(session) + 1;
            var latency = random.NextInt32(40_000) + (random.NextInt32(1_000) / 1_000m);
            rows.Add(new Row(session, sequence, latency, string.Create(CultureInfo.InvariantCulture, $"{condition},{sitting},{sequence},{index * 50_000L},{latency},response")));
        }

        return rows;
    }

    private static string Spoil(Row row, SeededGenerator random)
    {
        var cells = row.Text.Split(',');
        switch (random.NextInt32(8))
        {
            case 0:
                cells[4] = "";
                break;
            case 1:
                cells[4] = "-" + cells[4] + "1";
                break;
            case 2:
                cells[2] = "1";
                break;
            case 3:
                cells[5] = "lost";
                break;
            case 4:
                return string.Join(',', cells[..random.NextInt32(5)].Append("x"));
            case 5:
                cells[4] = "\"" + cells[4];
                break;
            case 6:
                cells[0] = "";
                break;
            default:
                return row.Text + ",,";
        }

        return string.Join(',', cells);
    }

    private static ImportPlan Import(string text)
    {
        using var folder = new TemporaryFolder();
        return Assert.Single(DelimitedTextImport.Read([folder.Write("rows.csv", text)], new DelimitedTextOptions(), [], cancellation: TestContext.Current.CancellationToken));
    }

    private sealed record Row(string Session, long Sequence, decimal LatencyUs, string Text);
}
