using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Tarry.Rig.Frames;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using static System.FormattableString;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>From a recording of the rig's readings to a session of a stick. One that was cut off by a crash gives what it holds.</summary>
public static class RecordedStick
{
    private const int MostRefusedInWords = 1_000;

    /// <summary>Reads a recording.</summary>
    /// <param name="path">The file.</param>
    /// <param name="key">The session that it becomes; its procedure must be the recording's.</param>
    /// <exception cref="RigException">It is no such recording, or holds no reading that is part of the procedure.</exception>
    public static (StickSession Session, ImportRecord Import) Read(string path, SessionKey key) => Find(path, key)
        ?? throw new RigException($"{path} holds no reading of its procedure.", "Remove it, and record again.");

    /// <summary>Reads a recording; null where it holds no reading that is part of the procedure.</summary>
    /// <param name="path">The file.</param>
    /// <param name="key">The session that it becomes; its procedure must be the recording's.</param>
    /// <exception cref="RigException">It is no such recording.</exception>
    public static (StickSession Session, ImportRecord Import)? Find(string path, SessionKey key)
    {
        var content = File.ReadAllBytes(path);
        var lines = Encoding.UTF8.GetString(content).Split('\n');
        if (StickRecordingHeader.Read(lines[0]) is not { } header || StickProcedures.Find(header.Procedure) != key.Procedure)
        {
            throw new RigException($"{path} is no recording of this procedure.", "Remove it, and record again.");
        }

        var notes = new RecordingNotes(header);
        for (var index = 1; index < lines.Length - 1; index++)
        {
            notes.Take(lines[index], index + 1);
        }

        if (lines[^1].Length > 0)
        {
            notes.Refuse(lines.Length, "cut off: the recording did not end in good order");
        }

        var samples = notes.Samples();
        return samples.Count == 0 ? null : Sealed(path, Convert.ToHexStringLower(SHA256.HashData(content)), key, header, notes, samples);
    }

    private static (StickSession Session, ImportRecord Import) Sealed(
        string path, string hash, SessionKey key, StickRecordingHeader header, RecordingNotes notes, StickSamples samples)
    {
        var name = Path.GetFileName(path);
        var options = new Dictionary<string, string>
        {
            ["interval_us"] = header.IntervalUs.ToString(CultureInfo.InvariantCulture),
            ["reference"] = header.Reference,
            ["y_direction"] = header.YIsDown ? "down" : "up",
        };
        var rows = notes.Readings + notes.Refused.Count;
        var range = new StickRange(0, StickReading.Greatest, 1);
        var record = new SessionRecord
        {
            Key = key,
            Segments = [new Segment(header.BootId, 1, header.TickHz, null)],
            Board = header.Board,
            Firmware = header.Firmware,
            Source = new SourceFile(name, hash, "stick-recording", options, rows),
            Stick = new StickSetup
            {
                Procedure = key.Procedure!.Value,
                Source = StickSetup.FromRig,
                X = range,
                Y = range,
                Stimulus = samples.Stimulus.IsEmpty ? StickStimulus.None : samples.StimulusY.IsEmpty ? StickStimulus.Angle : StickStimulus.Level,
                StimulusUncertainty = samples.Stimulus.IsEmpty ? null : header.StimulusUncertainty,
            },
            Events = [.. notes.Events, .. notes.Missing()],
            Refused = [.. notes.Refused.Take(MostRefusedInWords)],
            RefusedTotal = notes.Refused.Count,
            CountsReconciled = notes.Reconciled,
        };
        return (new StickSession(record, samples), new ImportRecord
        {
            FileName = name,
            Sha256 = hash,
            Format = "stick-recording",
            Options = options,
            RowsRead = rows,
            RowsKept = samples.Count,
            RefusedTotal = notes.Refused.Count,
            RefusedByReason = notes.Refused.GroupBy(item => item.Reason).ToDictionary(group => group.Key, group => (long)group.Count()),
            Refused = record.Refused,
        });
    }
}
