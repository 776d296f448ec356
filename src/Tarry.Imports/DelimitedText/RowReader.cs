namespace Tarry.Imports.DelimitedText;

/// <summary>Splits delimited text into rows of cells, by RFC 4180, in bounded memory and without a string a cell.</summary>
/// <remarks>
/// Ours rather than a library's because a measurement is not to be lost to a stray quotation mark: a quoted cell that does not
/// end costs its own line and reading goes on at the next, where a general reader swallows everything up to the next mark.
/// A quotation mark inside a cell that does not begin with one is an ordinary character. Lines end with LF, CRLF or CR.
/// Blank lines and comments are passed over.
/// </remarks>
internal sealed class RowReader(TextReader text, char delimiter, char commentPrefix)
{
    /// <summary>Characters in the longest row: a thousand times what a trial takes.</summary>
    public const int LongestRow = 65_536;

    private readonly char[] buffer = new char[4 * LongestRow];
    private readonly List<Cell> cells = [];
    private int start;
    private int end;
    private bool ended;
    private long nextLine = 1;

    /// <summary>The line on which the row begins, from 1.</summary>
    public long Line { get; private set; }

    /// <summary>Why the row could not be split; its cells are then those of its first line, or none.</summary>
    public RowDefect Defect { get; private set; }

    /// <summary>How many cells the row has.</summary>
    public int Count => cells.Count;

    /// <summary>A cell's text, until the next <see cref="Read"/>.</summary>
    public ReadOnlySpan<char> this[int index] => buffer.AsSpan(cells[index].Start, cells[index].Length);

    /// <summary>Goes to the next row; false at the end.</summary>
    /// <exception cref="IOException">The source cannot be read.</exception>
    public bool Read()
    {
        while (true)
        {
            Fill();
            if (start == end)
            {
                return false;
            }

            Line = nextLine;
            var lineLength = LengthOfLine();
            if (lineLength > LongestRow)
            {
                SkipLongLine();
                return true;
            }

            var line = buffer.AsSpan(start, lineLength);
            if (line.IsEmpty || line[0] == commentPrefix)
            {
                GoBehind(start + lineLength);
                continue;
            }

            Defect = RowDefect.None;
            var rowEnd = start + lineLength;
            if (!line.Contains('"'))
            {
                SplitPlainly(line);
            }
            else if ((Defect = SplitQuoted(out var quotedEnd)) == RowDefect.None)
            {
                rowEnd = quotedEnd;
            }
            else
            {
                SplitPlainly(line);
            }

            GoBehind(rowEnd);
            return true;
        }
    }

    private void SplitPlainly(ReadOnlySpan<char> line)
    {
        cells.Clear();
        var from = 0;
        while (true)
        {
            var length = line[from..].IndexOf(delimiter);
            if (length < 0)
            {
                cells.Add(new Cell(start + from, line.Length - from));
                return;
            }

            cells.Add(new Cell(start + from, length));
            from += length + 1;
        }
    }

    /// <summary>Nothing is changed in the buffer before the whole row is known to be sound, so that a bad one can be read again.</summary>
    private RowDefect SplitQuoted(out int at)
    {
        cells.Clear();
        at = start;
        while (true)
        {
            if (at < end && buffer[at] == '"')
            {
                var from = ++at;
                var doubled = false;
                while (true)
                {
                    var quote = buffer.AsSpan(at..Math.Min(end, start + LongestRow)).IndexOf('"');
                    if (quote < 0)
                    {
                        return RowDefect.QuoteNotClosed;
                    }

                    at += quote;
                    if (at + 1 == end || buffer[at + 1] != '"')
                    {
                        break;
                    }

                    doubled = true;
                    at += 2;
                    if (at > start + LongestRow)
                    {
                        return RowDefect.QuoteNotClosed;
                    }
                }

                cells.Add(new Cell(from, at - from, doubled));
                at++;
                if (at < end && buffer[at] != delimiter && buffer[at] is not ('\r' or '\n'))
                {
                    return RowDefect.TextAfterQuote;
                }
            }
            else
            {
                var rest = buffer.AsSpan(at, end - at);
                var length = rest.IndexOfAny(delimiter, '\r', '\n');
                length = length < 0 ? rest.Length : length;
                cells.Add(new Cell(at, length));
                at += length;
            }

            if (at - start > LongestRow)
            {
                return RowDefect.QuoteNotClosed;
            }

            if (at == end || buffer[at] != delimiter)
            {
                UndoubleQuotes();
                return RowDefect.None;
            }

            at++;
        }
    }

    private void UndoubleQuotes()
    {
        for (var index = 0; index < cells.Count; index++)
        {
            var cell = cells[index];
            if (!cell.Doubled)
            {
                continue;
            }

            var write = cell.Start;
            for (var read = cell.Start; read < cell.Start + cell.Length; read++)
            {
                buffer[write++] = buffer[read];
                read += buffer[read] == '"' ? 1 : 0;
            }

            cells[index] = new Cell(cell.Start, write - cell.Start);
        }
    }

    private int LengthOfLine()
    {
        var window = buffer.AsSpan(start, end - start);
        var length = window.IndexOfAny('\r', '\n');
        return length < 0 ? window.Length : length;
    }

    private void SkipLongLine()
    {
        Defect = RowDefect.TooLong;
        cells.Clear();
        var length = LengthOfLine();
        while (start + length == end && !ended)
        {
            start = end;
            Fill();
            length = LengthOfLine();
        }

        start += length;
        Fill();
        GoBehind(start);
    }

    /// <summary>Passes over a row's text and its line end.</summary>
    private void GoBehind(int rowEnd)
    {
        var row = buffer.AsSpan(start, rowEnd - start);
        start = rowEnd;
        if (start < end)
        {
            start += buffer[start] == '\r' && start + 1 < end && buffer[start + 1] == '\n' ? 2 : 1;
        }

        nextLine++;
        for (var at = row.IndexOfAny('\r', '\n'); at >= 0; at = row.IndexOfAny('\r', '\n'))
        {
            nextLine++;
            row = row[(at + (row[at..].StartsWith("\r\n") ? 2 : 1))..];
        }
    }

    /// <summary>Sees to it that a whole row of allowed length, its line end and one more character are in the buffer.</summary>
    private void Fill()
    {
        if (ended || end - start > LongestRow + 2)
        {
            return;
        }

        buffer.AsSpan(start, end - start).CopyTo(buffer);
        end -= start;
        start = 0;
        while (!ended && end < buffer.Length)
        {
            var read = text.Read(buffer, end, buffer.Length - end);
            ended = read == 0;
            end += read;
        }
    }

    private readonly record struct Cell(int Start, int Length, bool Doubled = false);
}
