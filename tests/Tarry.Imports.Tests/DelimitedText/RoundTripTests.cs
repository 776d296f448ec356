using Tarry.Imports.DelimitedText;
using Tarry.Metrology;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.DelimitedText;

public class RoundTripTests
{
    [Theory]
    [InlineData(1_000_000)]
    [InlineData(1_000_000_000)]
    public void WriteAndRead_IntoANewStudy_GivesTheSameTrialsFactorsAndCounts(long tickHz)
    {
        using var folder = new TemporaryFolder();
        var original = MakeStudy(folder["original"], tickHz);
        var csv = Export(original, folder["first.csv"]);

        var copy = Study.Create(folder["copy"], "copy", null, 0.5);
        var plan = Assert.Single(DelimitedTextImport.Read([csv], new DelimitedTextOptions { FactorColumns = ["shell colour"] }, copy.File.Conditions, cancellation: TestContext.Current.CancellationToken));
        using (var held = copy.AcquireLock("test"))
        {
            plan.AddTo(copy, held);
        }

        copy = Study.Open(folder["copy"]);
        Assert.Empty(StudyCheck.Run(copy).Problems);
        Assert.Equal(original.SessionKeys, copy.SessionKeys);
        foreach (var key in original.SessionKeys)
        {
            var (before, after) = (original.Read(key), copy.Read(key));
            Assert.Equal(before.Trials, after.Trials);
            Assert.Equal(SessionTally.Of(before, original.File.Exclusions), SessionTally.Of(after, copy.File.Exclusions));
        }

        Assert.Equal(
            original.File.Conditions.OrderBy(condition => condition.Id).Select(Described),
            copy.File.Conditions.OrderBy(condition => condition.Id).Select(Described));
        Assert.Equal(File.ReadAllBytes(csv), File.ReadAllBytes(Export(copy, folder["second.csv"])));
    }

    private static string Described(ConditionEntry condition) =>
        $"{condition.Id} {condition.NominalReportHz} {string.Join(" ", condition.Factors.OrderBy(factor => factor.Key, StringComparer.Ordinal).Select(factor => $"{factor.Key}={factor.Value}"))}";

    private static string Export(Study study, string path)
    {
        using var output = new StreamWriter(path);
        LongFormWriter.Write(output, study.File, study.SessionKeys.Select(study.Read), TestContext.Current.CancellationToken);
        return path;
    }

    private static Study MakeStudy(string folder, long tickHz)
    {
        var random = new SeededGenerator(11);
        var study = Study.Create(folder, "original", null, 0.5);
        using var held = study.AcquireLock("test");
        ConditionEntry[] conditions =
        [
            new() { Id = "quill-usb", Factors = new Dictionary<string, string> { ["device"] = "Quill 2, \"blue\"", ["link"] = "=usb", ["shell colour"] = "-3 °" }, NominalReportHz = 500 },
            new() { Id = "board", Factors = new Dictionary<string, string> { ["device"] = "bench board" }, NominalReportHz = 66.7 },
        ];
        var sessions = new List<(SessionRecord, IReadOnlyList<Trial>)>();
        foreach (var key in new[] { new SessionKey("monday", "board"), new SessionKey("monday", "quill-usb"), new SessionKey("tuesday", "quill-usb") })
        {
            var trials = new List<Trial>();
            long press = 0;
            for (var sequence = 1; sequence <= 500; sequence++)
            {
                press = sequence == 301 ? 7 : press + random.NextInt32(1_000_000) + 1;
                var outcome = (Outcome)random.NextInt32(4);
                long? latency = outcome is Outcome.Response or Outcome.Early ? random.NextInt32(50_000_000) : null;
                var flags = outcome == Outcome.Refused ? 0 : (TrialFlags)random.NextInt32(16);
                trials.Add(new Trial(sequence, sequence <= 300 ? 0 : 1, press, latency, random.NextInt32(5) == 0 ? latency + 9 : null, outcome, flags, outcome == Outcome.Refused ? 0 : random.NextInt32(256)));
            }

            sessions.Add((new SessionRecord { Key = key, Segments = [new Segment(0, 1, tickHz, null), new Segment(1, 301, tickHz, null)] }, trials));
        }

        var import = new ImportRecord { FileName = "invented", Sha256 = new string('0', 64), Format = "test", RowsRead = 1_500, RowsKept = 1_500, RefusedTotal = 0 };
        study.SealImported(held, sessions, import, conditions);
        study.AddExclusion(held, new Exclusion(new SessionKey("monday", "quill-usb"), "frame cap was off", 1, 200));
        study.AddExclusion(held, new Exclusion(new SessionKey("tuesday", "quill-usb"), "cable was loose", null, null));
        return study;
    }
}
