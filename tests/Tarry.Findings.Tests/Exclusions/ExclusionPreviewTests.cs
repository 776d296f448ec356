using Tarry.Findings.Comparisons;
using Tarry.Findings.Exclusions;
using Tarry.Findings.Json;
using Tarry.Metrology;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Tests;

namespace Tarry.Findings.Tests.Exclusions;

public sealed class ExclusionPreviewTests : IDisposable
{
    private static readonly Exclusion _odd = new(SessionKey.Parse(StoredStudy.Odd), "another game was open", null, null);
    private readonly StoredStudy stored = new();

    [Fact]
    public void Run_WithAFurtherExclusion_WritesNothing()
    {
        var before = Contents();
        StudyAnalysis.Run(stored.Open(), [_odd], 1, "test", TestContext.Current.CancellationToken);
        Assert.Equal(before, Contents());
    }

    [Fact]
    public void Run_WithAFurtherExclusion_FindsWhatItFindsOnceItIsKept()
    {
        var previewed = StudyAnalysis.Run(stored.Open(), [_odd], 1, "test", TestContext.Current.CancellationToken);
        var study = stored.Open();
        using (var held = study.AcquireLock("test"))
        {
            study.AddExclusion(held, _odd);
        }

        Assert.Equal(Json(stored), FindingsJson.Write(previewed));
    }

    [Fact]
    public void Run_AfterTakingBackIn_FindsWhatItFoundAtFirst()
    {
        var (atFirst, files) = (Json(stored), Contents());
        var study = stored.Open();
        using (var held = study.AcquireLock("test"))
        {
            study.AddExclusion(held, _odd);
            Assert.NotEqual(atFirst, Json(stored));
            study.RemoveExclusion(held, _odd);
        }

        Assert.Equal(atFirst, Json(stored));
        Assert.Equal(files["study.toml"], Contents()["study.toml"]);
    }

    [Fact]
    public void Effect_OfTheOddSession_MovesTheMeanToTheTruthAndTellsThePairApart()
    {
        var before = StudyAnalysis.Run(stored.Open(), 1, "test", TestContext.Current.CancellationToken);
        var after = StudyAnalysis.Run(stored.Open(), [_odd], 1, "test", TestContext.Current.CancellationToken);
        var effect = ExclusionEffect.Of(before, after, StoredStudy.Slow);

        // Fixed 5.2 ms and half of a slot of 1 ms; a third of the odd session's 6 ms on top of it before.
        Assert.Equal(5.7 + 2, Assert.IsType<Estimate<Latency>>(effect.Before.Mean).Value.Milliseconds, 0.1);
        Assert.Equal(5.7, Assert.IsType<Estimate<Latency>>(effect.After.Mean).Value.Milliseconds, 0.1);
        Assert.Equal(3, effect.Before.UsedSessions);
        Assert.Equal(2, effect.After.UsedSessions);
        Assert.Equal(StoredStudy.Trials, effect.After.Counts.Excluded);
        Assert.Equal(effect.Before.Counts.Captured, effect.After.Counts.Captured);
        Assert.Equal(3, effect.Pairs);
        var told = Assert.Single(effect.Verdicts, change => change.Before.A == StoredStudy.Reference && change.Before.B == StoredStudy.Slow);
        Assert.Equal(Verdict.Undecided, told.Before.Verdict);
        Assert.Equal(Verdict.Faster, told.After!.Verdict);
    }

    [Fact]
    public void Effect_OfEverySessionOfACondition_LeavesNothingToCompare()
    {
        var before = StudyAnalysis.Run(stored.Open(), 1, "test", TestContext.Current.CancellationToken);
        var all = before.Conditions.Single(condition => condition.Id == StoredStudy.Slow).Sessions.Select(session => _odd with { Session = session.Key }).ToList();
        var effect = ExclusionEffect.Of(before, StudyAnalysis.Run(stored.Open(), all, 1, "test", TestContext.Current.CancellationToken), StoredStudy.Slow);
        Assert.IsType<NotEnough<Latency>>(effect.After.Mean);
        Assert.Null(effect.RankAfter);
        Assert.Equal(2, effect.Verdicts.Count(change => change.After is null));
    }

    public void Dispose() => stored.Dispose();

    private static string Json(StoredStudy stored) => FindingsJson.Write(StudyAnalysis.Run(stored.Open(), 1, "test", TestContext.Current.CancellationToken));

    private SortedDictionary<string, string> Contents() => new(Directory
        .EnumerateFiles(stored.Folder, "*", SearchOption.AllDirectories)
        .Where(file => !Path.GetFileName(file).Contains("lock", StringComparison.Ordinal))
        .ToDictionary(file => Path.GetRelativePath(stored.Folder, file), file => Convert.ToHexString(File.ReadAllBytes(file))));
}
