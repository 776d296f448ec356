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

    /// <summary>Begins a file.</summary>
    /// <exception cref="IOException">It is there already, or cannot be made.</exception>
    public RecordingFile(string path, RecordingHeader header)
    {
        ArgumentNullException.ThrowIfNull(header);
        stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.Read);
        waiting.Append(header.ToLine()).Append('\n');
        writer = new Thread(Write) { Name = "recording", IsBackground = true };
        writer.Start();
    }

    /// <summary>Takes a report.</summary>
    public void Add(long stampNanoseconds, ReadOnlySpan<byte> bytes)
    {
        lock (taking)
        {
            waiting.Append(CultureInfo.InvariantCulture, $"{stampNanoseconds} {Convert.ToHexStringLower(bytes)}\n");
        }
    }

    /// <summary>Takes a note of what happened.</summary>
    public void AddEvent(string text)
    {
        lock (taking)
        {
            waiting.Append("e ").Append(text.ReplaceLineEndings(" ")).Append('\n');
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
