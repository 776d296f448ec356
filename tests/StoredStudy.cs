using System.Globalization;
using Tarry.Metrology;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Tests;

/// <summary>
/// A small study on the disk with known truth: latency = fixed + Uniform(0, report interval) + Normal(0, 0.3 ms), three conditions in
/// three sittings, and one session that is late by 6 ms for no reason of the device.
/// </summary>
internal sealed class StoredStudy : IDisposable
{
    public const string Reference = "bench-board";
    public const string Quick = "quill-usb";
    public const string Slow = "quill-dongle";
    public const string Odd = "tuesday.quill-dongle";
    public const int Trials = 120;
    private const long TickHz = 1_000_000;

    /// <param name="parent">The folder that it is made in; one of its own, removed with it, where none is given.</param>
    public StoredStudy(string? parent = null)
    {
        owned = parent is null;
        Parent = parent ?? Directory.CreateTempSubdirectory("tarry-").FullName;
        Folder = Path.Combine(Parent, Name);
        var study = Study.Create(Folder, "Two links <b>&</b> a board", Reference, 0.5);
        using var held = study.AcquireLock("test");
        var random = new SeededGenerator(3);
        var sessions = new[] { "monday", "tuesday", "wednesday" }
            .SelectMany(sitting => new[] { Session(sitting, Reference, 2, random), Session(sitting, Quick, 4, random), Session(sitting, Slow, 5.2, random) })
            .ToList();
        study.SealImported(held, sessions, Import, [Condition(Reference, "Board", "usb"), Condition(Quick, "Quill 2", "usb"), Condition(Slow, "Quill 2", "dongle")]);
    }

    private readonly bool owned;

    /// <summary>Its name in the folder that it is in.</summary>
    public static string Name => "links";

    /// <summary>The folder that it is in.</summary>
    public string Parent { get; }

    /// <summary>Its own folder.</summary>
    public string Folder { get; }

    public Study Open() => Study.Open(Folder);

    public void Dispose()
    {
        if (owned)
        {
            Directory.Delete(Parent, recursive: true);
        }
    }

    private static ImportRecord Import => new()
    {
        FileName = "bench.csv",
        Sha256 = new string('0', 64),
        Format = "csv",
        RowsRead = (9 * Trials) + 2,
        RowsKept = 9 * Trials,
        RefusedTotal = 2,
        RefusedByReason = new Dictionary<string, long> { ["latency is not a number"] = 2 },
        Refused = [new RefusedItem("line 4", "latency is not a number"), new RefusedItem("line 9", "latency is not a number")],
        RefusedUnassigned = 2,
    };

    private static ConditionEntry Condition(string id, string device, string link) => new()
    {
        Id = id,
        Factors = new Dictionary<string, string> { ["device"] = device, ["unit"] = "0041", ["link"] = link },
        NominalReportHz = 1000,
    };

    private static (SessionRecord Record, IReadOnlyList<Trial> Trials) Session(string sitting, string condition, double fixedMs, SeededGenerator random)
    {
        var key = new SessionKey(sitting, condition);
        var late = key.ToString() == Odd ? 6 : 0;
        var press = 0.0;
        var trials = Enumerable.Range(1, Trials).Select(sequence =>
        {
            press += 90 + (60 * random.NextDouble());
            var latency = fixedMs + late + random.NextDouble() + (0.3 * random.NextNormal());
            return sequence % 40 == 0 && condition == Slow
                ? new Trial(sequence, 0, (long)(press * 1000), null, null, Outcome.Missed, TrialFlags.None, 0)
                : new Trial(sequence, 0, (long)(press * 1000), (long)(Math.Max(0.2, latency) * 1000), null, Outcome.Response, TrialFlags.None, 1);
        }).ToList();
        var record = new SessionRecord
        {
            Key = key,
            Segments = [new Segment(null, 1, TickHz, null)],
            Source = new SourceFile("bench.csv", new string('0', 64), "csv", new Dictionary<string, string> { ["made"] = sitting.ToString(CultureInfo.InvariantCulture) }, Trials),
        };
        return (record, trials);
    }
}
