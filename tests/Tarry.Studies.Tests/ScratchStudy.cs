using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Tests;

/// <summary>A study in a folder of its own that is removed with the test.</summary>
internal sealed class ScratchStudy : IDisposable
{
    public ScratchStudy(params string[] conditions)
    {
        Parent = Directory.CreateTempSubdirectory("tarry-").FullName;
        Folder = Path.Combine(Parent, "study");
        Study = Study.Create(Folder, "Three pads and a dongle", "bench-board", 0.5);
        using var held = Study.AcquireLock("test");
        foreach (var condition in conditions)
        {
            Study.AddCondition(held, Condition(condition));
        }
    }

    public string Parent { get; }

    public string Folder { get; }

    public Study Study { get; }

    public static ConditionEntry Condition(string id, params (string Key, string Level)[] factors) => new()
    {
        Id = id,
        Factors = factors.ToDictionary(factor => factor.Key, factor => factor.Level),
    };

    public static SessionRecord Record(string sitting = "monday", string condition = "quill-usb") => new()
    {
        Key = new SessionKey(sitting, condition),
        Segments = [new Segment(7, 1, 16_000_000, null)],
        Board = "uno",
        Firmware = "0.1.0",
        Host = "bench ü",
        FrameCapHz = 240,
        Run = new RunSettings("edge", 70_000, 120_000, 20_000, 60_000, 10_000, 1),
    };

    public static Trial Response(long sequence, long latency = 107_000, int segment = 0) =>
        new(sequence, segment, sequence * 1_600_000, latency + sequence, null, Outcome.Response, TrialFlags.None, 1);

    public static Trial Missed(long sequence) => new(sequence, 0, sequence * 1_600_000, null, null, Outcome.Missed, TrialFlags.None, 0);

    public static ImportRecord Import(string sha256 = "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff") => new()
    {
        FileName = "monday.csv",
        Sha256 = sha256,
        Format = "csv",
        RowsRead = 12,
        RowsKept = 10,
        RefusedTotal = 2,
        RefusedByReason = new Dictionary<string, long> { ["latency is not a number"] = 2 },
        Refused = [new RefusedItem("line 4", "latency is not a number")],
        RefusedUnassigned = 1,
    };

    /// <summary>A sealed live session with so many responses and, last, one missed trial.</summary>
    public void Seal(string sitting = "monday", string condition = "quill-usb", int responses = 10)
    {
        using var held = Study.AcquireLock("test");
        using var recorder = Study.Begin(held, Record(sitting, condition));
        for (var sequence = 1; sequence <= responses; sequence++)
        {
            recorder.Append(Response(sequence));
        }

        recorder.Append(Missed(responses + 1));
        recorder.Seal();
    }

    public string PathOf(string relative) => Path.Combine([Folder, .. relative.Split('/')]);

    public void Dispose() => Directory.Delete(Parent, recursive: true);
}
