using System.Runtime.InteropServices;

namespace Tarry.Studies.Reports;

/// <summary>Reports, as a rule in order of time: their ticks, where they came from and their bytes. 24 bytes a report beside its own; what is more than some 24 MB lies in a temporary file.</summary>
public sealed class ReportLog
{
    /// <summary>The longest report that is kept, in bytes: the limit of the Linux HID core (<c>HID_MAX_BUFFER_SIZE</c>).</summary>
    public const int LongestReport = 16_384;

    private const int RowsInChunk = 65_536;
    private const int RowChunksInMemory = 8;
    private const int BytesInChunk = 1 << 20;
    private const int ByteChunksInMemory = 12;
    private readonly SpilledChunks<Row> rows;
    private readonly SpilledChunks<byte> chunks;
    private readonly Dictionary<int, int> counts;
    private readonly Func<long, long>? scale;
    private int used;

    /// <summary>Begins without reports.</summary>
    public ReportLog() => (rows, chunks, counts) = (new(RowsInChunk, RowChunksInMemory), new(BytesInChunk, ByteChunksInMemory), []);

    /// <summary>The same reports on another scale: what is kept of them is kept once.</summary>
    private ReportLog(ReportLog source, Func<long, long> scale)
    {
        (rows, chunks, counts, Count, IsInOrder) = (source.rows, source.chunks, source.counts, source.Count, source.IsInOrder);
        this.scale = source.scale is { } first ? tick => scale(first(tick)) : scale;
    }

    /// <summary>How many reports.</summary>
    public int Count { get; private set; }

    /// <summary>Whether no tick goes back.</summary>
    public bool IsInOrder { get; private set; } = true;

    /// <summary>Adds a report.</summary>
    /// <param name="tick">When it came.</param>
    /// <param name="endpoint">Where from.</param>
    /// <param name="data">Its bytes, at most <see cref="LongestReport"/>.</param>
    /// <exception cref="ArgumentException">The report is too long.</exception>
    /// <exception cref="InvalidOperationException">These reports were selected from others.</exception>
    /// <exception cref="IOException">The temporary file cannot be written.</exception>
    public void Add(long tick, int endpoint, ReadOnlySpan<byte> data)
    {
        if (scale is not null)
        {
            throw new InvalidOperationException("Reports are added to the log that these were selected from.");
        }

        if (data.Length > LongestReport)
        {
            throw new ArgumentException($"The report has {data.Length} bytes, more than {LongestReport}.", nameof(data));
        }

        IsInOrder &= Count == 0 || tick >= Tick(Count - 1);
        MakeRoom(data.Length);
        data.CopyTo(chunks.Last.AsSpan(used));
        rows.Last[Count % RowsInChunk] = new Row(tick, endpoint, (ushort)data.Length, ((long)(chunks.Count - 1) * BytesInChunk) + used);
        CollectionsMarshal.GetValueRefOrAddDefault(counts, endpoint, out _)++;
        used += data.Length;
        Count++;
    }

    /// <summary>How many reports came from an endpoint.</summary>
    public int CountOf(int endpoint) => counts.GetValueOrDefault(endpoint);

    /// <summary>When a report came.</summary>
    public long Tick(int index) => scale is null ? At(index).Tick : scale(At(index).Tick);

    /// <summary>Where a report came from.</summary>
    public int Endpoint(int index) => At(index).Endpoint;

    /// <summary>The bytes of a report, until the next is added.</summary>
    public ReadOnlySpan<byte> Data(int index)
    {
        var row = At(index);
        return chunks[(int)(row.Place / BytesInChunk)].AsSpan((int)(row.Place % BytesInChunk), row.Length);
    }

    /// <summary>
    /// The reports of some endpoints in order of time, on another scale of ticks; those of one tick stay in order. Where all are wanted and in order, no report is copied.
    /// </summary>
    /// <param name="wanted">Whether the reports of an endpoint are taken.</param>
    /// <param name="tick">From a tick here to one there; what is later here is not earlier there.</param>
    public ReportLog Select(Func<int, bool> wanted, Func<long, long> tick)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(tick);
        if (IsInOrder && counts.Keys.All(wanted))
        {
            return new ReportLog(this, tick);
        }

        var selected = new ReportLog();
        foreach (var index in InOrder())
        {
            if (wanted(Endpoint(index)))
            {
                selected.Add(tick(Tick(index)), Endpoint(index), Data(index));
            }
        }

        return selected;
    }

    // Those that came before one that is earlier are as a rule few: they alone are sorted, and merged with the others.
    private IEnumerable<int> InOrder()
    {
        var (late, greatest) = (new List<int>(), long.MinValue);
        for (var index = 0; index < Count && !IsInOrder; index++)
        {
            var tick = Tick(index);
            if (tick < greatest)
            {
                late.Add(index);
            }

            greatest = Math.Max(greatest, tick);
        }

        var (sorted, next, passed) = (late.OrderBy(Tick).ToList(), 0, 0);
        for (var index = 0; index < Count; index++)
        {
            if (passed < late.Count && late[passed] == index)
            {
                passed++;
                continue;
            }

            for (var tick = Tick(index); next < sorted.Count && (Tick(sorted[next]), sorted[next]).CompareTo((tick, index)) < 0; next++)
            {
                yield return sorted[next];
            }

            yield return index;
        }

        for (; next < sorted.Count; next++)
        {
            yield return sorted[next];
        }
    }

    private void MakeRoom(int bytes)
    {
        if (Count % RowsInChunk == 0)
        {
            rows.Begin();
        }
        else if (Count == rows.Last.Length)
        {
            rows.Grow();
        }

        if (chunks.Count == 0 || used + bytes > BytesInChunk)
        {
            chunks.Begin();
            used = 0;
        }

        while (used + bytes > chunks.Last.Length)
        {
            chunks.Grow();
        }
    }

    private Row At(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
        return rows[index / RowsInChunk][index % RowsInChunk];
    }

    private readonly record struct Row(long Tick, int Endpoint, ushort Length, long Place);
}
