using System.Globalization;
using Tarry.Rig.Link;
using Tarry.Rig.Sticks.Recording;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Tests.Emulator;

/// <summary>The real firmware's converter at the wipers of a simulated stick, against every voltage that it was given.</summary>
public class StickReadingTests
{
    private const int ArefMillivolts = 3_300;

    [Theory]
    [InlineData("328p-16", 1_000, 16, 26, 108, 130)]
    [InlineData("328p-8", 1_000, 31, 50, 112, 150)]
    [InlineData("32u4-16", 625, 16, 26, 108, 130)]
    public void Stream_OfAStickThatGoesRound_ReadsEveryVoltageItWasGiven(
        string board, int intervalUs, double leastLateUs, double mostLateUs, double leastBetweenUs, double mostBetweenUs)
    {
        using var folder = new TemporaryFolder();
        using var bench = new EmulatedBench(folder, board, "--wiper", "circle", "--wiper-turn-ms", "700", "--wiper-truth", folder["wipers.csv"]);
        var session = Record(folder, bench, new StickRecordingRequest(StickProcedure.FlickRelease) { IntervalUs = (uint)intervalUs }, 6_000);
        bench.Summary();

        Assert.True(session.Record.CountsReconciled);
        Assert.Empty(session.Record.Events);
        var truth = Conversions(folder["wipers.csv"]);
        var perUs = session.Record.Segments[0].TickHz / 1e6;
        var readings = Readings(folder["recording.txt"], (long)(intervalUs * perUs)).ToList();
        Assert.True(readings.Count >= 6_000);
        Assert.Equal(Enumerable.Range(1, readings.Count).Select(number => (long)number), readings.Select(reading => reading.Number));
        foreach (var (_, due, x, y) in readings)
        {
            var at = truth.BinarySearch((due, '\0', 0));
            var (first, second) = (truth[~at], truth[~at + 1]);
            Assert.Equal(('x', 'y'), (first.Axis, second.Axis));
            Assert.InRange((first.Tick - due) / perUs, leastLateUs - 0.5, mostLateUs);
            Assert.InRange((second.Tick - first.Tick) / perUs, leastBetweenUs, mostBetweenUs);
            // Counts are cut to whole ones; the emulator takes voltages to the nearest millivolt, 0.16 counts.
            Assert.InRange(x - (first.Millivolts * 1_023 / ArefMillivolts), -1.16, 0.16);
            Assert.InRange(y - (second.Millivolts * 1_023 / ArefMillivolts), -1.16, 0.16);
        }
    }

    [Fact]
    public void Substitution_ByTheRigsOwnConverter_IsReadBackAtItsLevels()
    {
        using var folder = new TemporaryFolder();
        using var bench = new EmulatedBench(folder, "328p-16", "--input", "converter", "--wiper", "converter");
        var session = Record(folder, bench, new StickRecordingRequest(StickProcedure.Substitution), 6_000);
        Assert.Contains("bad 0", bench.Summary());

        Assert.Equal(StickStimulus.Level, session.Setup.Stimulus);
        var known = Enumerable.Range(0, session.Samples.Count).Where(index => !double.IsNaN(session.Samples.Stimulus[index])).ToList();
        Assert.InRange(known.Count, session.Samples.Count - 13, session.Samples.Count);
        Assert.True(known.Select(index => session.Samples.Stimulus[index]).Distinct().Count() >= 12);
        // The converter cuts to 1/4096 of the reference (a quarter of a count), the reading to a whole count.
        Assert.All(known, index => Assert.InRange(session.Samples.X[index] - (session.Samples.Stimulus[index] * 1_023), -1.5, 0.2));
    }

    [Fact]
    public void Stream_ThroughGarbledLines_CountsEveryReadingThatIsMissing()
    {
        using var folder = new TemporaryFolder();
        using var bench = new EmulatedBench(folder, "328p-16", "--wiper", "circle", "--garble-share", "0.03");
        var session = Record(folder, bench, new StickRecordingRequest(StickProcedure.FlickRelease), 8_000);

        var readings = Readings(folder["recording.txt"], 16_000).ToList();
        var missing = readings[^1].Number - readings.Count;
        Assert.InRange(missing, 60, 600);
        Assert.True(session.Record.CountsReconciled);
        Assert.Contains(session.Record.Events, text => text.StartsWith($"{missing} readings are missing: 0 found no room in the rig", StringComparison.Ordinal));
    }

    private static StickSession Record(TemporaryFolder folder, EmulatedBench bench, StickRecordingRequest request, long readings)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var enough = new StopAfter(readings, stop);
        Assert.False(new StickRecorder(new SerialRigPortSource(bench.Port), request, enough).Run(folder["recording.txt"], stop.Token));
        return RecordedStick.Read(folder["recording.txt"], new SessionKey("bench", "pad", request.Procedure)).Session;
    }

    private static IEnumerable<(long Number, long Due, int X, int Y)> Readings(string file, long intervalTicks)
    {
        foreach (var parts in File.ReadLines(file).Where(line => line.StartsWith("r ", StringComparison.Ordinal)).Select(line => line.Split(' ')))
        {
            for (var index = 0; index < parts[4].Length / 6; index++)
            {
                int Count(int at) => int.Parse(parts[4].AsSpan((6 * index) + at, 3), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
                yield return (Whole(parts[1]) + index, Whole(parts[2]) + (index * intervalTicks), Count(0), Count(3));
            }
        }
    }

    private static List<(long Tick, char Axis, double Millivolts)> Conversions(string file) =>
        [.. File.ReadLines(file).Skip(1).Select(line => line.Split(',')).Where(cells => cells.Length == 3)
            .Select(cells => (Whole(cells[0]), cells[1][0], double.Parse(cells[2], CultureInfo.InvariantCulture)))];

    private static long Whole(string text) => long.Parse(text, CultureInfo.InvariantCulture);

    private sealed class StopAfter(long readings, CancellationTokenSource stop) : IProgress<StickProgress>
    {
        public void Report(StickProgress value)
        {
            if (value.Readings >= readings)
            {
                stop.Cancel();
            }
        }
    }
}
