using Tarry.Studies.Disk;

namespace Tarry.Studies.Journals;

/// <summary>
/// Journal lines on their way to the disk: taken at once, written and flushed by a thread of its own at most 100 ms later, or as
/// soon as 8 wait.
/// </summary>
internal sealed class BackgroundJournal : IDisposable
{
    private const int LinesThatDoNotWait = 8;
    private static readonly TimeSpan _longestWait = TimeSpan.FromMilliseconds(100);

    private readonly object _gate = new();
    private readonly JournalWriter _writer;
    private readonly DurableSequences _durable = new();
    private readonly Action<long> _reached;
    private readonly string _place;
    private readonly Thread _thread;
    private List<Line> _pending = [];
    private long _taken;
    private long _written;
    private bool _flushAsked;
    private bool _stopping;
    private StudyDiskException? _fault;

    /// <summary>Starts the thread.</summary>
    /// <param name="writer">Where the lines go; disposed with this.</param>
    /// <param name="safe">Sequence numbers that are on the disk already.</param>
    /// <param name="place">The journal, for messages.</param>
    /// <param name="reached">Told on the thread, after a flush, that <see cref="DurableSequence"/> has grown.</param>
    public BackgroundJournal(JournalWriter writer, IEnumerable<long> safe, string place, Action<long> reached)
    {
        _writer = writer;
        _place = place;
        _reached = reached;
        _durable.Add(safe);
        _thread = new Thread(WriteUntilStopped) { IsBackground = true, Name = place };
        _thread.Start();
    }

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

    /// <summary>Throws if no more can be taken: stopped, or the disk failed.</summary>
    public void RequireReady()
    {
        lock (_gate)
        {
            ObjectDisposedException.ThrowIf(_stopping, typeof(SessionRecorder));
            ThrowIfFaulty();
        }
    }

    /// <summary>Takes a line without waiting.</summary>
    /// <param name="content">The line.</param>
    /// <param name="sequence">The trial's sequence number if it is one.</param>
    public void Enqueue(string content, long? sequence)
    {
        lock (_gate)
        {
            RequireReady();
            _pending.Add(new Line(content, sequence));
            _taken++;
            if (_pending.Count >= LinesThatDoNotWait)
            {
                Monitor.PulseAll(_gate);
            }
        }
    }

    /// <summary>Returns when everything taken so far is on the disk.</summary>
    /// <exception cref="StudyDiskException">The disk failed.</exception>
    public void Flush()
    {
        lock (_gate)
        {
            var target = _taken;
            _flushAsked = true;
            Monitor.PulseAll(_gate);
            while (_written < target && _fault is null)
            {
                Monitor.Wait(_gate);
            }

            ThrowIfFaulty();
        }
    }

    /// <summary>Writes what waits and closes the journal.</summary>
    public void Dispose()
    {
        lock (_gate)
        {
            _stopping = true;
            Monitor.PulseAll(_gate);
        }

        _thread.Join();
        _writer.Dispose();
    }

    private void ThrowIfFaulty()
    {
        if (_fault is { } fault)
        {
            // A new one each time, so that each has the stack of its own caller.
            throw new StudyDiskException(fault.Message, fault.Place, fault.Remedy, fault);
        }
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
            _reached(after);
        }

        return true;
    }

    private readonly record struct Line(string Content, long? Sequence);
}
