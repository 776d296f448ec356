using Tarry.Studies.Disk;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Journals;

/// <summary>Appends lines to a journal and flushes them. Not for more than one thread.</summary>
internal sealed class JournalWriter : IDisposable
{
    private readonly Stream _stream;
    private readonly string _session;
    private long _lines;
    private long _safeBytes;

    /// <summary>Goes on after what a stream holds.</summary>
    /// <param name="stream">The journal, open for writing.</param>
    /// <param name="key">Its session.</param>
    /// <param name="lines">Whole lines that it holds.</param>
    /// <param name="wholeBytes">Their bytes; anything after them is cut.</param>
    public JournalWriter(Stream stream, SessionKey key, long lines, long wholeBytes)
    {
        _stream = stream;
        _session = key.ToString();
        _lines = lines;
        _safeBytes = wholeBytes;
        if (stream.Length != wholeBytes)
        {
            stream.SetLength(wholeBytes);
        }

        stream.Position = wholeBytes;
    }

    /// <summary>Makes a journal that is whole with its first line, or not there at all.</summary>
    public static void Create(StudyPaths paths, SessionRecord initial)
    {
        var header = $"{JournalReader.Magic}{Study.FormatVersion} {StudyJson.Line(SessionDocument.Of(initial, null))}";
        DurableFile.Write(paths.Journal(initial.Key), JournalLine.Encode(initial.Key.ToString(), 1, header));
    }

    /// <summary>Opens a journal to go on with it.</summary>
    public static Stream Open(StudyPaths paths, SessionKey key) =>
        new FileStream(paths.Journal(key), FileMode.Open, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete, 0);

    /// <summary>Appends lines in one write and flushes them to the disk; when it returns they are safe.</summary>
    public void Write(IReadOnlyList<string> contents)
    {
        using var batch = new MemoryStream();
        var number = _lines;
        foreach (var content in contents)
        {
            batch.Write(JournalLine.Encode(_session, ++number, content));
        }

        try
        {
            _stream.Write(batch.GetBuffer().AsSpan(0, (int)batch.Length));
            Flush();
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            CutBack();
            throw;
        }

        _lines = number;
        _safeBytes += batch.Length;
    }

    /// <inheritdoc/>
    public void Dispose() => _stream.Dispose();

    private void Flush()
    {
        if (_stream is FileStream file)
        {
            file.Flush(flushToDisk: true);
        }
        else
        {
            _stream.Flush();
        }
    }

    private void CutBack()
    {
        try
        {
            _stream.SetLength(_safeBytes);
        }
        catch (Exception exception) when (DiskFault.Is(exception))
        {
            // Recovery cuts the torn line just as well.
        }
    }
}
