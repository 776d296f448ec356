using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Rig.Tests.Runs;

/// <summary>A study in a folder of its own, with one condition.</summary>
internal sealed class TemporaryStudy : IDisposable
{
    public static readonly SessionKey Key = new("monday", "pad");
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("tarry-rig-tests-");

    public TemporaryStudy()
    {
        Study = Study.Create(Path.Combine(folder.FullName, "study"), "A study", null, 0.5);
        Held = Study.AcquireLock("tests");
        Study.AddCondition(Held, new ConditionEntry { Id = Key.Condition, Factors = new Dictionary<string, string>() });
    }

    public Study Study { get; }

    public StudyLock Held { get; private set; }

    public RunResult Run(IRigPortSource source, long trials, CancellationToken? cancellation = null, IProgress<RunProgress>? progress = null) =>
        Run(source, new RunRequest { Key = Key, Trials = trials }, cancellation, progress);

    public RunResult Run(IRigPortSource source, RunRequest request, CancellationToken? cancellation = null, IProgress<RunProgress>? progress = null) =>
        new CaptureRun(Study, Held, request, source, progress).Run(cancellation ?? TestContext.Current.CancellationToken);

    public void Dispose()
    {
        Held.Dispose();
        folder.Delete(recursive: true);
    }
}
