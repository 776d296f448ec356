using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;
using Tarry.Web.Desk;
using Tarry.Web.Hosting;
using Tarry.Web.Publishing;
using Tarry.Web.Shelf;
using Tarry.Web.Uploads;

namespace Tarry.Web.Tests.Pages;

/// <summary>Pages without a browser or a server, over a shelf of its own.</summary>
internal sealed class PageContext : BunitContext
{
    public PageContext()
    {
        Services.AddSingleton(new ServeOptions(Folder, 0, "0.0.0") { MakeDemonstration = (folder, show, stop) => MakeDemonstration?.Invoke(folder, show, stop) });
        Services.AddSingleton(TimeProvider.System);
        Services.AddSingleton<StudyShelf>();
        Services.AddSingleton<StudyDesks>();
        Services.AddSingleton<StudySummaries>();
        Services.AddSingleton<Demonstration>();
        Services.AddSingleton(UploadLimits.Usual);
        Services.AddSingleton<UploadFolder>();
        Services.AddSingleton<Publications>();
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        DefaultWaitTimeout = TimeSpan.FromSeconds(30);
        JSInterop.Mode = JSRuntimeMode.Loose;
    }

    /// <summary>The shelf's folder.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("tarry-pages-").FullName;

    /// <summary>Makes the demonstration, where a test has one.</summary>
    public Action<string, Action<int, int>, CancellationToken>? MakeDemonstration { get; set; }

    /// <summary>Where the window is, relative to the app.</summary>
    public string Address => Services.GetRequiredService<NavigationManager>() is var navigation ? navigation.ToBaseRelativePath(navigation.Uri) : "";

    /// <summary>Goes to an address before a page is rendered.</summary>
    public void GoTo(string address) => Services.GetRequiredService<NavigationManager>().NavigateTo(address);

    /// <summary>A study with conditions and no data.</summary>
    public Study Study(string name, string title = "Pads", params ConditionEntry[] conditions)
    {
        var study = Studies.Study.Create(Path.Combine(Folder, name), title, "bench-board", 0.5);
        using var held = study.AcquireLock("test");
        foreach (var condition in conditions)
        {
            study.AddCondition(held, condition);
        }

        return study;
    }

    /// <summary>A condition with a device, a link and a layer.</summary>
    public static ConditionEntry Condition(string id, string device = "Quill 2", string link = "usb", string layer = "none") => new()
    {
        Id = id,
        Factors = new Dictionary<string, string> { ["device"] = device, ["link"] = link, ["layer"] = layer },
        NominalReportHz = 500,
    };

    /// <summary>Seals a session of some trials into a study.</summary>
    public static void Capture(Study study, string sitting, string condition, int trials = 3)
    {
        using var held = study.AcquireLock("test");
        var record = new SessionRecord
        {
            Key = new SessionKey(sitting, condition),
            Segments = [new Segment(null, 1, 1_000_000, null)],
            Source = new SourceFile("made.csv", new string('0', 64), "long-form-csv", new Dictionary<string, string>(), trials),
        };
        var made = Enumerable.Range(1, trials).Select(number => new Trial(number, 0, number * 100_000, 8_000 + (number % 7 * 100), null, Outcome.Response, TrialFlags.None, 1)).ToList();
        study.SealImported(held, [(record, made)], new ImportRecord { FileName = "made.csv", Sha256 = new string('0', 64), Format = "long-form-csv", RowsRead = trials, RowsKept = trials, RefusedTotal = 0 }, []);
    }

    /// <summary>Seals a recording of a stick at rest into a study, which goes to and fro between two counts.</summary>
    public static void Rest(Study study, string sitting, string condition, int positions = 400)
    {
        using var held = study.AcquireLock("test");
        var record = new SessionRecord
        {
            Key = new SessionKey(sitting, condition, StickProcedure.Rest),
            Segments = [new Segment(null, 1, 1_000_000, null)],
            Stick = new StickSetup { Procedure = StickProcedure.Rest, Source = StickSetup.FromCsv, X = new StickRange(0, 255, 1), Y = new StickRange(0, 255, 1) },
        };
        var samples = new StickSamples(
            [.. Enumerable.Range(0, positions).Select(number => 2_000L * number)],
            [.. Enumerable.Range(0, positions).Select(number => 128.0 + (number % 2))],
            [.. Enumerable.Repeat(127.0, positions)]);
        study.SealImported(held, [new StickSession(record, samples)], new ImportRecord { FileName = "made.csv", Sha256 = new string('0', 64), Format = "stick-csv", RowsRead = positions, RowsKept = positions, RefusedTotal = 0 }, []);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing && Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);
        }
    }
}
