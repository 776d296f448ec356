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
    private const int LinesThatDoNotWait = 8;
    private static readonly TimeSpan _longestWait = TimeSpan.FromMilliseconds(100);

    private readonly Lock _callers = new();
    private readonly object _gate = new();
    private readonly JournalState _state;
    private readonly JournalWriter _writer;
    private readonly DurableSequences _durable = new();
    private readonly Func<SessionData> _seal;
    private readonly string _place;
    private readonly Thread _thread;
    private List<Line> _pending = [];
    private long _appended;
    private long _written;
    private bool _flushAsked;
    private bool _stopping;
    private StudyException? _fault;

    internal SessionRecorder(JournalState state, JournalWriter writer, string place, Func<SessionData> seal)
    {
        _state = state;
        _writer = writer;
        _place = place;
        _seal = seal;
        _durable.Add(state.TrialsInOrder().Select(trial => trial.Sequence));
        _thread = new Thread(WriteUntilStopped) { IsBackground = true, Name = $"journal {state.Key}" };
        _thread.Start();
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
            lock (_gate)
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
            lock (_gate)
            {
                return _state.TrialsInOrder();
            }
        }
    }

    /// <summary>The highest sequence number up to which every trial from 1 is safe on the disk; 0 if none is.</summary>
    public long DurableSequence
    {
        get
        {
            lock (_gate)
            {
                return _durable.Highest;
            }
        }
    }

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
    public void Flush()
    {
        lock (_gate)
        {
            var target = _appended;
            _flushAsked = true;
            Monitor.PulseAll(_gate);
            while (_written < target && _fault is null)
            {
                Monitor.Wait(_gate);
            }

            ThrowIfFaulty();
        }
    }

    /// <summary>Seals the session: writes its Parquet file and record, reads them back, enters the manifest and removes the journal.</summary>
    /// <returns>The session as sealed.</returns>
    /// <exception cref="StudyDiskException">The disk failed; the journal is kept.</exception>
    public SessionData Seal()
    {
        lock (_callers)
        {
            Flush();
            Stop();
            return _seal();
        }
    }

    /// <summary>Writes what waits and closes the journal, which stays.</summary>
    public void Dispose()
    {
        lock (_callers)
        {
            Stop();
        }
    }

    private void Enqueue(string content, Action apply, long? sequence = null)
    {
        lock (_gate)
        {
            ObjectDisposedException.ThrowIf(_stopping, this);
            ThrowIfFaulty();
            apply();
            _pending.Add(new Line(content, sequence));
            _appended++;
            if (_pending.Count >= LinesThatDoNotWait)
            {
                Monitor.PulseAll(_gate);
            }
        }
    }

    private void ThrowIfFaulty()
    {
        if (_fault is { } fault)
        {
            // A new one each time, so that each has the stack of its own caller.
            throw new StudyDiskException(fault.Message, fault.Place, fault.Remedy, fault);
        }
    }

    private void Stop()
    {
        lock (_gate)
        {
            _stopping = true;
            Monitor.PulseAll(_gate);
        }

        _thread.Join();
        _writer.Dispose();
    }

    private void WriteUntilStopped()
    {
        while (TakeBatch() is { } batch)
        {
            if (batch.Count > 0 && !Write(batch))
            {
                return;
            }
        }
    }

    /// <summary>The lines to write next, after a wait of at most 100 ms; null when stopped and all is written.</summary>
    private List<Line>? TakeBatch()
    {
        lock (_gate)
        {
            if (_pending.Count < LinesThatDoNotWait && !_flushAsked && !_stopping)
            {
                Monitor.Wait(_gate, _longestWait);
            }

            if (_stopping && _pending.Count == 0)
            {
                return null;
            }

            var batch = _pending;
            _pending = [];
            _flushAsked = false;
            return batch;
        }
    }

    private bool Write(List<Line> batch)
    {
        try
        {
            _writer.Write([.. batch.Select(line => line.Content)]);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            lock (_gate)
            {
                _fault = DiskFault.Describe(exception, _place, $"All trials up to {_durable.Highest} are safe.");
                Monitor.PulseAll(_gate);
            }

            return false;
        }

        long before, after;
        lock (_gate)
        {
            before = _durable.Highest;
            _durable.Add(batch.Where(line => line.Sequence is not null).Select(line => line.Sequence!.Value));
            after = _durable.Highest;
            _written += batch.Count;
            Monitor.PulseAll(_gate);
        }

        if (after > before)
        {
            Durable?.Invoke(after);
        }

        return true;
    }

    private readonly record struct Line(string Content, long? Sequence);
}
