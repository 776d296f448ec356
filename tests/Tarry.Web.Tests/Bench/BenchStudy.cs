using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.OpenRuns;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Rig.Runs;
using Tarry.Web.Bench;
using Tarry.Web.Desk;
using Tarry.Web.Hosting;
using Tarry.Web.Shelf;

namespace Tarry.Web.Tests.Bench;

/// <summary>A shelf with one study of two conditions, in a folder of its own.</summary>
internal sealed class BenchStudy : IDisposable
{
    public const string Name = "pads";
    public static readonly SessionKey Key = new("monday", "quill-usb");
    private readonly DirectoryInfo shelf = Directory.CreateTempSubdirectory("tarry-bench-tests-");

    public BenchStudy()
    {
        var study = Study.Create(Folder, "Two pads", "bench-board", 0.5);
        using var held = study.AcquireLock("tests");
        study.AddCondition(held, new ConditionEntry { Id = "bench-board", Factors = new Dictionary<string, string>(), NominalReportHz = 1000 });
        study.AddCondition(held, new ConditionEntry { Id = "quill-usb", Factors = new Dictionary<string, string> { ["device"] = "Quill 2" }, NominalReportHz = 500 });
        Options = new ServeOptions(shelf.FullName, 0, "0");
        Shelf = new StudyShelf(Options);
        Desks = new StudyDesks(Shelf, Options);
    }

    public string Folder => Path.Combine(shelf.FullName, Name);

    public string ShelfFolder => shelf.FullName;

    public ServeOptions Options { get; }

    public StudyShelf Shelf { get; }

    public StudyDesks Desks { get; }

    public Study Open() => Study.Open(Folder);

    public LiveBench Bench(IBenchPorts? ports = null) => new(Desks, ports ?? new BenchPorts(TimeProvider.System), TimeProvider.System);

    /// <summary>A run on the simulated bench.</summary>
    public static RunCard Card(long? trials, double? speed = null, string port = SimulatedDefault.Port) =>
        new(Name, Key, new OpenRun { Port = port, Speed = speed, Run = RunRequest.DefaultSettings, Trials = trials });

    public void Dispose() => shelf.Delete(recursive: true);
}
