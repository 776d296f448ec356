using System.Globalization;
using System.Text.Json;
using Tarry.Studies.Disk;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Journals;

/// <summary>What the lines of a journal add up to: the session so far. Live capture and recovery both go through it.</summary>
internal sealed class JournalState
{
    public const int RefusedKept = 1000;

    private readonly List<Trial> _trials = [];
    private readonly HashSet<long> _sequences = [];
    private readonly List<Segment> _segments;
    private readonly List<RefusedItem> _refused;
    private readonly List<string> _events;
    private readonly SessionRecord _initial;
    private long _refusedTotal;
    private bool? _countsReconciled;

    public JournalState(SessionRecord initial)
    {
        _initial = initial;
        _segments = [.. initial.Segments];
        _refused = [.. initial.Refused];
        _events = [.. initial.Events];
        _refusedTotal = initial.RefusedTotal;
        _countsReconciled = initial.CountsReconciled;
    }

    public SessionKey Key => _initial.Key;

    public int SegmentCount => _segments.Count;

    public SessionRecord Record => _initial with
    {
        Segments = [.. _segments],
        Refused = [.. _refused],
        RefusedTotal = _refusedTotal,
        Events = [.. _events],
        CountsReconciled = _countsReconciled,
    };

    /// <summary>The trials in order of their sequence numbers; a trial that was sent again came late.</summary>
    public Trial[] TrialsInOrder()
    {
        var trials = _trials.ToArray();
        Array.Sort(trials, static (left, right) => left.Sequence.CompareTo(right.Sequence));
        return trials;
    }

    /// <summary>Why a trial cannot be taken; null if it can.</summary>
    public string? Objection(Trial trial) =>
        TrialRules.Broken(trial, _segments.Count)
        ?? (_sequences.Contains(trial.Sequence) ? $"the sequence number {trial.Sequence} is there already" : null);

    public void Add(Trial trial)
    {
        _trials.Add(trial);
        _sequences.Add(trial.Sequence);
    }

    public void Add(Segment segment) => _segments.Add(segment);

    public void SetClockFit(int segment, ClockFitRecord fit) => _segments[segment] = _segments[segment] with { ClockFit = fit };

    public void Add(RefusedItem item)
    {
        _refusedTotal++;
        if (_refused.Count < RefusedKept)
        {
            _refused.Add(item);
        }
    }

    public void AddEvent(string text) => _events.Add(text);

    public void SetCountsReconciled(bool agreed) => _countsReconciled = agreed;

    /// <summary>Takes a line whose checksum is right.</summary>
    /// <exception cref="FormatException">It says nothing that a journal says.</exception>
    /// <exception cref="JsonException">Its JSON is not of the form.</exception>
    public void Apply(ReadOnlySpan<byte> content)
    {
        var rest = content.Length > 2 ? content[2..] : default;
        switch (content.Length > 2 && content[1] == (byte)' ' ? content[0] : (byte)0)
        {
            case (byte)'t':
                var trial = JournalLine.ReadTrial(rest);
                if (Objection(trial) is { } objection)
                {
                    throw new FormatException(objection);
                }

                Add(trial);
                break;
            case (byte)'s':
                Add(StudyJson.Read<Segment>(rest));
                break;
            case (byte)'c':
                ApplyClockFit(rest);
                break;
            case (byte)'r':
                Add(StudyJson.Read<RefusedItem>(rest));
                break;
            case (byte)'e':
                AddEvent(StudyJson.Read<string>(rest));
                break;
            case (byte)'n':
                SetCountsReconciled(StudyJson.Read<bool>(rest));
                break;
            default:
                throw new FormatException("the line is of an unknown kind; it may be of a newer version");
        }
    }

    private void ApplyClockFit(ReadOnlySpan<byte> rest)
    {
        var space = rest.IndexOf((byte)' ');
        var index = space < 0 ? -1 : int.Parse(rest[..space], NumberStyles.None, CultureInfo.InvariantCulture);
        if (index < 0 || index >= _segments.Count)
        {
            throw new FormatException($"the clock fit is of segment {index}, which there is not");
        }

        SetClockFit(index, StudyJson.Read<ClockFitRecord>(rest[(space + 1)..]));
    }
}
