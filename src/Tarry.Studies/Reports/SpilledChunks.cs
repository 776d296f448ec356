using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Tarry.Studies.Reports;

/// <summary>Values in chunks of one length, added one after the other: the first are in memory, those behind them in a temporary file, so that a capture of any size takes bounded memory.</summary>
/// <param name="length">Values in a chunk.</param>
/// <param name="inMemory">How many chunks stay in memory.</param>
/// <remarks>Several threads may read at once; the file goes with the process or with the last reader.</remarks>
internal sealed class SpilledChunks<T>(int length, int inMemory)
    where T : unmanaged
{
    private const int Shortest = 64;

    /// <summary>The last chunks that were read back: a reader walks along, and what is near each place is asked for again.</summary>
    private readonly Stored?[] read = new Stored?[4];
    private readonly List<T[]> kept = [];
    private SafeFileHandle? file;

    /// <summary>How many chunks.</summary>
    public int Count { get; private set; }

    /// <summary>The last chunk, which is being filled. The first grows, so that a few values take little.</summary>
    public T[] Last { get; private set; } = [];

    /// <summary>A chunk; it stays as it is unless it is the last.</summary>
    public T[] this[int index] => index == Count - 1 ? Last : index < kept.Count ? kept[index] : Read(index);

    /// <summary>Begins a further chunk; the one before is full.</summary>
    /// <exception cref="IOException">The temporary file cannot be written.</exception>
    public void Begin()
    {
        if (Count > inMemory)
        {
            file ??= Open();
            RandomAccess.Write(file, MemoryMarshal.AsBytes(Last.AsSpan()), Place(Count - 1));
        }
        else if (Count > 0)
        {
            kept.Add(Last);
        }

        Last = Count > inMemory ? Last : new T[Count == 0 ? Math.Min(Shortest, length) : length];
        Count++;
    }

    /// <summary>Doubles the last chunk, which is shorter than the others.</summary>
    public void Grow()
    {
        var longer = new T[Math.Min(2 * Last.Length, length)];
        Last.CopyTo(longer, 0);
        Last = longer;
    }

    private long Place(int index) => (long)(index - inMemory) * length * Unsafe.SizeOf<T>();

    private T[] Read(int index)
    {
        ref var slot = ref read[index % read.Length];
        var found = slot;
        if (found is null || found.Index != index)
        {
            found = new Stored(index, GC.AllocateUninitializedArray<T>(length));
            var bytes = MemoryMarshal.AsBytes(found.Values.AsSpan());
            for (var at = 0; at < bytes.Length;)
            {
                var count = RandomAccess.Read(file!, bytes[at..], Place(index) + at);
                at += count > 0 ? count : throw new IOException("The temporary file of the reports has become shorter.");
            }

            slot = found;
        }

        return found.Values;
    }

    private static SafeFileHandle Open()
    {
        // Without a name it goes even where the process is killed. Windows needs the name as long as the file is open, and sees to that by itself.
        var path = Path.GetTempFileName();
        if (OperatingSystem.IsWindows())
        {
            return File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None, FileOptions.DeleteOnClose);
        }

        var handle = File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        File.Delete(path);
        return handle;
    }

    private sealed record Stored(int Index, T[] Values);
}
