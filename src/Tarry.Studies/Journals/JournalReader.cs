using System.Text.Json;
using Tarry.Studies.Disk;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Journals;

/// <summary>A journal read back.</summary>
/// <param name="State">The session as far as it is whole.</param>
/// <param name="Lines">Whole lines.</param>
/// <param name="WholeBytes">Bytes of the whole lines.</param>
/// <param name="TornBytes">Bytes after them: a last line that was cut off.</param>
internal sealed record JournalReading(JournalState State, long Lines, long WholeBytes, long TornBytes)
{
    /// <summary>What to tell of the torn line; null if there is none.</summary>
    public string? TornNotice =>
        TornBytes == 0 ? null : $"the last line of the journal was torn and has been cut ({TornBytes} bytes after {Lines} whole lines)";
}

/// <summary>Reads journals: whole lines are kept, a bad last line is cut, a bad line before it is damage.</summary>
internal static class JournalReader
{
    public const string Magic = "tarry-journal ";

    /// <summary>Reads a journal from the disk without changing it; another program may be writing to it.</summary>
    public static JournalReading Read(StudyPaths paths, SessionKey key)
    {
        var place = paths.Relative(paths.Journal(key));
        byte[] content;
        using (var stream = new FileStream(paths.Journal(key), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete))
        {
            content = new byte[stream.Length];
            stream.ReadExactly(content);
        }

        return Read(content, key, place);
    }

    /// <summary>Reads a journal from its bytes.</summary>
    public static JournalReading Read(ReadOnlySpan<byte> content, SessionKey key, string place)
    {
        var session = key.ToString();
        JournalState? state = null;
        long lines = 0;
        var offset = 0;
        while (offset < content.Length)
        {
            var length = content[offset..].IndexOf((byte)'\n');
            var line = length < 0 ? content[offset..] : content.Slice(offset, length);
            var last = length < 0 || offset + length + 1 == content.Length;
            if (length < 0 || !JournalLine.TryDecode(session, lines + 1, line, out var text))
            {
                return last && state is not null
                    ? new JournalReading(state, lines, offset, content.Length - offset)
                    : throw Damaged(place, lines + 1, offset, "the checksum does not fit the line");
            }

            state = Take(state, text, key, place, lines + 1, offset);
            lines++;
            offset += length + 1;
        }

        return new JournalReading(state ?? throw Damaged(place, 1, 0, "there is no first line"), lines, offset, 0);
    }

    private static JournalState Take(JournalState? state, ReadOnlySpan<byte> text, SessionKey key, string place, long line, long offset)
    {
        try
        {
            if (state is null)
            {
                return new JournalState(Header(text, key, place));
            }

            state.Apply(text);
            return state;
        }
        catch (Exception exception) when (exception is FormatException or JsonException or OverflowException or ArgumentException)
        {
            throw Damaged(place, line, offset, exception.Message);
        }
    }

    private static SessionRecord Header(ReadOnlySpan<byte> text, SessionKey key, string place)
    {
        var space = text.StartsWith("tarry-journal "u8) ? text[Magic.Length..].IndexOf((byte)' ') : -1;
        if (space < 0)
        {
            throw new FormatException("it does not begin with 'tarry-journal'");
        }

        FormatVersions.Require(long.Parse(text.Slice(Magic.Length, space), System.Globalization.CultureInfo.InvariantCulture), place);
        var record = SessionDocument.Read(text[(Magic.Length + space + 1)..], place).ToRecord();
        return record.Key == key ? record : throw new FormatException($"it is of session {record.Key}");
    }

    private static StudyDamagedException Damaged(string place, long line, long offset, string what)
    {
        var where = $"{place} line {line} (byte {offset})";
        return new StudyDamagedException(
            $"{where}: {what}. The {line - 1} lines before it are whole.",
            where,
            "Bring the journal back from a copy of the study. Without one, keep a copy of the damaged file, then cut it before that line with a text editor.");
    }
}
