using System.Text.Json;
using Tarry.Findings.Conditions;
using Tarry.Findings.Json;
using Tarry.Findings.Quality;
using Tarry.Findings.ReportIntervals;
using Tarry.Findings.Samples;
using Tarry.Metrology;
using Tarry.Statistics.SlotGrid;
using Tarry.Statistics.Tests.SlotGrid;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Findings.Tests.ReportIntervals;

public sealed class ReportIntervalTests
{
    private static readonly SimulatedSlots Reference = new() { SlotMs = 1, SlotPpm = 0, BeforeMs = 0.1, Trials = 1000 };
    private static readonly SimulatedSlots Device = new() { SlotMs = 8, Trials = 1000 };

    [Fact]
    public void Study_WithAReference_StatesIntervalFixedDelayAndFold()
    {
        var found = Analysed(Device, out var document).ReportInterval!;
        Assert.Equal(Device.TrueIntervalMs, found.Interval!.Value.Milliseconds, 1e-4);
        Assert.True(found.Interval.Interval.Contains(LatencyDifference.FromMilliseconds(Device.TrueIntervalMs)));
        Assert.Equal(2, found.Interval.Sessions);
        
        // A block of 8 ms is plain in the distribution, too.
        Assert.Equal(SlotShapeAgreement.Agree, found.Agreement);
        Assert.Equal(2, found.FixedDelays.Count);
        Assert.All(found.FixedDelays, delay => Assert.Equal(Device.FixedMs, Assert.IsType<FixedDelayFound>(delay.Outcome).DelayMs, 0.1));
        Assert.InRange(found.Fold!.Points.Count, 400, 800);
        Assert.Equal(2000, found.Fold.ArrivalsInReportInterval.Sum());
        Assert.Equal(2000, found.Fold.ArrivalsInFrame.Sum());

        // Frames bunch the arrivals: noise of 0.32 ms in 4.1 ms puts 95 % within 0.63 of the frame, 15 of 48 parts.
        Assert.True(found.Fold.ArrivalsInFrame.Skip(16).Take(16).Sum() > 1800);
        Assert.NotEmpty(document.Conditions[0].ReportInterval!.ChainLines);
        Assert.DoesNotContain(document.Conditions[1].Cautions, caution => caution.Kind is CautionKind.Beat or CautionKind.PhaseLocked);
    }

    [Fact]
    public void Study_InJson_SaysIntervalAndEvidence()
    {
        Analysed(Device, out var document);
        using var json = JsonDocument.Parse(FindingsJson.Write(document));
        var interval = json.RootElement.GetProperty("conditions")[1].GetProperty("report_interval_ms");
        Assert.Equal(Device.TrueIntervalMs, interval.GetProperty("value").GetDouble(), 1e-4);
        Assert.True(interval.GetProperty("low").GetDouble() < interval.GetProperty("high").GetDouble());
        Assert.Contains("frames of 4.1", interval.GetProperty("evidence").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void FramesThatBeatSlowly_AreCautionedAndStayOutOfThePool()
    {
        var condition = Analysed(Device with { FrameMs = 4, SlotPpm = -18, Trials = 300 }, out _);
        var beat = condition.Cautions.First(caution => caution.Kind == CautionKind.Beat);
        Assert.True(beat.Numbers["beat_s"] > beat.Numbers["session_s"] / 2);
        Assert.InRange(beat.Numbers["frame_cap_hz"], 200, 247);
        Assert.All(condition.Sessions, session => Assert.False(session.InPool));
        Assert.Null(condition.ReportInterval!.Interval);
    }

    [Fact]
    public void PressesAtRegularTimes_GetNoInterval()
    {
        var condition = Analysed(Device with { ShortestMs = 99.9, LongestMs = 100.1, Trials = 300 }, out _);
        Assert.Equal(ReportIntervalReason.PressLattice, condition.ReportInterval!.Unidentified!.Reason);
    }

    [Fact]
    public void PressesThatKeepStep_GetNoInterval()
    {
        // Whole multiples of 8 ms apart, less than a tenth of it off: what is found may be the presses' own period.
        var random = new SeededGenerator(9);
        var samples = new List<SessionSample>();
        foreach (var sitting in new[] { "one", "two" })
        {
            var presses = new double[800];
            var at = 0.0;
            for (var i = 0; i < presses.Length; i++)
            {
                at += 8 * Math.Round((60 + (80 * random.NextDouble())) / 8);
                presses[i] = at + (0.2 * random.NextNormal());
            }

            samples.Add(Sample("pad", new PressSeries(sitting, presses, [.. presses.Select(press => 6 + (8.0002 * Math.Ceiling(press / 8.0002)) - press + (0.3 * random.NextNormal()))])));
        }

        var entry = new ConditionEntry { Id = "pad", Factors = new Dictionary<string, string>(), NominalReportHz = 125 };
        var document = StudyAnalysis.Of(new StudyFile("locked", null, 0.5, [entry], []), samples, 0, 1, "test", withShapes: false);
        var condition = document.Conditions.Single();
        Assert.Contains(condition.Cautions, caution => caution.Kind == CautionKind.PhaseLocked);
        Assert.Null(condition.ReportInterval!.Interval);
    }

    [Theory]
    [InlineData(8, 4, 100, true)]
    [InlineData(8, 4.1, 100, false)]
    [InlineData(8, 4.0003, 100, false)]
    public void Beat_OfTwoIntervals_IsWorkedByHand(double reportMs, double frameMs, double seconds, bool tooSlow)
    {
        // q = 1, p = 2: 1/|1000/4.0003 - 250| = 53.3 s, so a session of 100 s sees 1.9 of them; of 4.1 ms 0.16 s.
        var beat = GridBeat.TooSlow(reportMs, frameMs, seconds);
        Assert.Equal(tooSlow || frameMs == 4.0003, beat is not null);
        if (frameMs == 4.0003)
        {
            Assert.Equal(53.337, beat!.Value.Seconds, 0.01);
            Assert.Null(GridBeat.TooSlow(reportMs, frameMs, 110));
        }
    }

    [Fact]
    public void EveryReason_HasWordsAndARemedy()
    {
        foreach (var reason in Enum.GetValues<ReportIntervalReason>())
        {
            var not = new UnidentifiedInterval(reason, null, [LatencyDifference.FromMilliseconds(8)]);
            Assert.NotEmpty(ReportIntervalWording.Reason(not));
            Assert.NotEmpty(ReportIntervalWording.Remedy(not));
        }
    }

    private static ConditionFinding Analysed(SimulatedSlots device, out FindingsDocument document)
    {
        var random = new SeededGenerator(6);
        var reference = Reference with { FrameMs = device.FrameMs, Trials = device.Trials };
        var samples = new[] { "one", "two" }
            .SelectMany(sitting => new[] { Sample("board", reference.Session(sitting, random)), Sample("pad", device.Session(sitting, random)) })
            .ToList();
        ConditionEntry[] conditions =
        [
            new() { Id = "board", Factors = new Dictionary<string, string>(), NominalReportHz = 1000 },
            new() { Id = "pad", Factors = new Dictionary<string, string>(), NominalReportHz = 125 },
        ];
        document = StudyAnalysis.Of(new StudyFile("slots", "board", 0.5, conditions, []), samples, 0, 1, "test");
        return document.Conditions[1];
    }

    private static SessionSample Sample(string condition, PressSeries series)
    {
        var key = new SessionKey(series.Sitting, condition);
        var presses = Enumerable.Range(0, series.Count).Select(series.PressMs).ToArray();
        var latencies = Enumerable.Range(0, series.Count).Select(series.LatencyMs).ToArray();
        return new SessionSample
        {
            Key = key,
            Record = new SessionRecord { Key = key, Segments = [new Segment(1, 1, 1_000_000, new ClockFitRecord(0, 0.5, 100, 200))] },
            Counts = new SessionCounts(latencies.Length, 0, 0, 0, 0),
            Latencies = new Sample(latencies, 0),
            Sequences = [.. Enumerable.Range(1, latencies.Length).Select(i => (long)i)],
            PressTimesMs = presses,
            Timed = [new TimedLatencies(presses, latencies)],
            ResolutionMs = 0.004,
            IntervalCensored = false,
            ExclusionReasons = [],
        };
    }
}
