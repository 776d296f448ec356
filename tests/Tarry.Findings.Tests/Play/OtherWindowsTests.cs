using Tarry.Findings.Json;
using Tarry.Studies.StudyFiles;
using Tarry.Tests;

namespace Tarry.Findings.Tests.Play;

public sealed class OtherWindowsTests
{
    [Theory]
    [InlineData(null, null)]
    [InlineData(5.0, null)]
    [InlineData(5.0, 3.0)]
    public void Play_ForOtherWindows_IsWhatAWholeAnalysisSays(double? window, double? player)
    {
        using var stored = new StoredStudy();
        var entry = new PlayEntry(window is { } ms ? [ms] : null, player is { } sd ? [sd] : null);
        var whole = StudyAnalysis.Run(stored.Open(), 1, "test", entry, TestContext.Current.CancellationToken);
        var plain = StudyAnalysis.Run(stored.Open(), 1, "test", TestContext.Current.CancellationToken);
        var play = StudyAnalysis.Play(stored.Open(), plain, entry, TestContext.Current.CancellationToken);
        Assert.Equal(FindingsJson.Write(whole), FindingsJson.Write(plain with { Play = play }));
        Assert.Equal(window is null && player is null, FindingsJson.Write(whole) == FindingsJson.Write(plain));
    }
}
