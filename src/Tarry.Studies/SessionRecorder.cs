using System.Globalization;
using Tarry.Studies.Disk;
using Tarry.Studies.Journals;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Studies;

/// <summary>
/// Records a live session. What is appended is on the disk at most 100 ms later (plus the time of the flush itself), written by a
/// thread of its own so that capture never waits for a disk.
/// </summary>
/// <remarks>
/// All members may be called from any thread. A disk that fails is told by the next call; from then on nothing more is taken, and
/// what was safe stays safe. <see cref="Dispose"/> without <see cref="Seal"/> leaves the journal for <see cref="Study.Resume"/>.
/// </remarks>
public sealed class SessionRecorder : IDisposable
{
    private readonly Lock _ending = new();
    private readonly Lock _taking = new();
    private readonly JournalState _state;
    private readonly BackgroundJournal _journal;
    private readonly Func<SessionData> _seal;

    internal SessionRecorder(JournalState state, JournalWriter writer, string place, Func<SessionData> seal)
    {
        _state = state;
        _seal = seal;
        _journal = new BackgroundJournal(
            writer,
            state.TrialsInOrder().Select(trial => trial.Sequence),
            place,
            sequence => Durable?.Invoke(sequence));
    }

    /// <summary>Raised on the writing thread, after a flush, with the new <see cref="DurableSequence"/>. A handler must not throw or wait.</summary>
    public event Action<long>? Durable;

    /// <summary>Which session.</summary>
    public SessionKey Key => _state.Key;

    /// <summary>The record as it stands.</summary>
    public SessionRecord Record
    {
        get
        {
            lock (_taking)
            {
                return _state.Record;
            }
        }
    }

    /// <summary>The trials so far, those not yet on the disk too, in order of their sequence numbers: a copy.</summary>
    public IReadOnlyList<Trial> Trials
    {
        get
        {
            lock (_taking)
            {
                return _state.TrialsInOrder();
            }
        }
    }

    /// <summary>The highest sequence number up to which every trial from 1 is safe on the disk; 0 if none is.</summary>
    public long DurableSequence => _journal.DurableSequence;

    /// <summary>Takes a trial; it is safe when <see cref="DurableSequence"/> has reached it.</summary>
    /// <exception cref="ArgumentException">The trial breaks a rule, or its sequence number is there already.</exception>
    /// <exception cref="StudyDiskException">The disk failed earlier.</exception>
    public void Append(Trial trial) => Enqueue(
        JournalLine.Trial(trial),
        () =>
        {
            if (_state.Objection(trial) is { } objection)
            {
                throw new ArgumentException($"Trial {trial.Sequence} of session {Key} cannot be taken: {objection}.", nameof(trial));
            }

            _state.Add(trial);
        },
        trial.Sequence);

    /// <summary>Begins the next unbroken stretch of the tick counter.</summary>
    /// <returns>Its index, for trials that belong to it.</returns>
    public int BeginSegment(Segment segment)
    {
        ArgumentNullException.ThrowIfNull(segment);
        var index = 0;
        Enqueue($"s {StudyJson.Line(segment)}", () =>
        {
            index = _state.SegmentCount;
            _state.Add(segment);
        });
        return index;
    }

    /// <summary>Sets the clock fit of a segment; a later one replaces it.</summary>
    public void SetClockFit(int segmentIndex, ClockFitRecord fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        Enqueue(string.Create(CultureInfo.InvariantCulture, $"c {segmentIndex} {StudyJson.Line(fit)}"), () =>
        {
            ArgumentOutOfRangeException.ThrowIfNegative(segmentIndex);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(segmentIndex, _state.SegmentCount);
            _state.SetClockFit(segmentIndex, fit);
        });
    }

    /// <summary>Notes something that came in and could not be kept. Every one is counted; the first 1,000 are kept in words.</summary>
    public void AddRefused(RefusedItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        Enqueue($"r {StudyJson.Line(item)}", () => _state.Add(item));
    }

    /// <summary>Notes what else happened, in words.</summary>
    public void AddEvent(string text)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(text);
        Enqueue($"e {StudyJson.Line(text)}", () => _state.AddEvent(text));
    }

    /// <summary>Notes whether the rig's own counts agreed.</summary>
    public void SetCountsReconciled(bool agreed) => Enqueue($"n {StudyJson.Line(agreed)}", () => _state.SetCountsReconciled(agreed));

    /// <summary>Returns when everything taken so far is on the disk.</summary>
    /// <exception cref="StudyDiskException">The disk failed; the message says what is safe.</exception>
    public void Flush() => _journal.Flush();

    /// <summary>Seals the session: writes its Parquet file and record, reads them back, enters the manifest and removes the journal.</summary>
    /// <returns>The session as sealed.</returns>
    /// <exception cref="StudyDiskException">The disk failed; the journal is kept.</exception>
    /// <exception cref="ObjectDisposedException">It was sealed or disposed before.</exception>
    public SessionData Seal()
    {
        lock (_ending)
        {
            _journal.RequireReady();
            Flush();
            _journal.Dispose();
            return _seal();
        }
    }

    /// <summary>Writes what waits and closes the journal, which stays.</summary>
    public void Dispose()
    {
        lock (_ending)
        {
            _journal.Dispose();
        }
    }

    private void Enqueue(string content, Action apply, long? sequence = null)
    {
        lock (_taking)
        {
            _journal.RequireReady();
            apply();
            _journal.Enqueue(content, sequence);
        }
    }
}
