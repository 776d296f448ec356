using System.Globalization;
using System.Text;

namespace Tarry.Rig.HostEvents.Recording;

/// <summary>Writes a recording: a text line a report, on the disk at most 100 ms later, by a thread of its own, so that a slow disk costs no report.</summary>
public sealed class RecordingFile : IDisposable
{
    private static readonly TimeSpan BetweenFlushes = TimeSpan.FromMilliseconds(100);
    private readonly FileStream stream;
    private readonly Lock taking = new();
    private readonly ManualResetEventSlim closing = new();
    private readonly Thread writer;
    private StringBuilder waiting = new();
    private IOException? failure;

    /// <summary>Begins a file of the host's input.</summary>
    /// <exception cref="IOException">It is there already, or cannot be made.</exception>
    public RecordingFile(string path, RecordingHeader header)
        : this(path, (header ?? throw new ArgumentNullException(nameof(header))).ToLine())
    {
    }

    /// <summary>Begins a file whose first line says what it is.</summary>
    /// <exception cref="IOException">It is there already, or cannot be made.</exception>
    public RecordingFile(string path, string firstLine)
    {
        stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.Read);
        waiting.Append(firstLine).Append('\n');
        writer = new Thread(Write) { Name = "recording", IsBackground = true };
        writer.Start();
    }

    /// <summary>Takes a report.</summary>
    public void Add(long stampNanoseconds, ReadOnlySpan<byte> bytes) =>
        AddLine(string.Create(CultureInfo.InvariantCulture, $"{stampNanoseconds} {Convert.ToHexStringLower(bytes)}"));

    /// <summary>Takes a note of what happened.</summary>
    public void AddEvent(string text) => AddLine("e " + text.ReplaceLineEndings(" "));

    /// <summary>Takes a line, without its end.</summary>
    public void AddLine(string line)
    {
        lock (taking)
        {
            waiting.Append(line).Append('\n');
        }
    }

    /// <summary>Whether the disk failed.</summary>
    /// <exception cref="IOException">It did; what was on it before is as it was.</exception>
    public void RequireSound()
    {
        if (Volatile.Read(ref failure) is { } broken)
        {
            throw broken;
        }
    }

    /// <summary>Brings everything to the disk and closes the file.</summary>
    public void Dispose()
    {
        closing.Set();
        writer.Join();
        stream.Dispose();
    }

    private void Write()
    {
        var last = false;
        while (!last)
        {
            last = closing.Wait(BetweenFlushes);
            StringBuilder taken;
            lock (taking)
            {
                (taken, waiting) = (waiting, new StringBuilder());
            }

            try
            {
                if (taken.Length > 0)
                {
                    stream.Write(Encoding.UTF8.GetBytes(taken.ToString()));
                    stream.Flush(flushToDisk: true);
                }
            }
            catch (IOException exception)
            {
                Volatile.Write(ref failure, exception);
                return;
            }
        }
    }
}
