using System.Text;
using CsvHelper;

namespace Tarry.Imports.DelimitedText;

/// <summary>Splits delimited text into rows of cells, by RFC 4180, in bounded memory and without a string a cell.</summary>
/// <remarks>
/// CsvHelper splits; this sees to it that a measurement is not lost to a stray quotation mark. A quoted cell that does not end
/// properly would swallow the rows up to the next mark or to the end, so it costs its own line here and reading goes on at the next.
/// A mark inside a cell that does not begin with one is an ordinary character. Lines end with LF, CRLF or CR. Blank lines and
/// comments are passed over.
/// </remarks>
internal sealed class RowReader : IDisposable
{
    /// <summary>Bytes in the longest row: a thousand times what a trial takes.</summary>
    public const int LongestRow = 65_536;

    private readonly HashedFile file;
    private readonly char delimiter;
    private readonly char commentPrefix;
    private CsvReader reader;
    private long linesBefore;
    private long bytesBefore;
    private char[] text = new char[1_024];
    private CsvMalformedReason? malformed;

    /// <summary>A reader from the start of a file.</summary>
    public RowReader(HashedFile file, char delimiter, char commentPrefix)
    {
        (this.file, this.delimiter, this.commentPrefix) = (file, delimiter, commentPrefix);
        reader = From(beginning: true);
    }

    /// <summary>The line on which the row begins, from 1.</summary>
    public long Line { get; private set; }

    /// <summary>Why the row could not be split; its cells are then those before the defect, or none.</summary>
    public RowDefect Defect { get; private set; }

    /// <summary>How many cells the row has.</summary>
    public int Count { get; private set; }

    /// <summary>A cell's text, until the next cell is asked for. Bytes that are not UTF-8 come as U+FFFD.</summary>
    public ReadOnlySpan<char> this[int index]
    {
        get
        {
            var bytes = reader.GetSpan(index);
            if (bytes.Length > text.Length)
            {
                text = new char[bytes.Length];
            }

            return text.AsSpan(0, Encoding.UTF8.GetChars(bytes, text));
        }
    }

    /// <summary>Goes to the next row; false at the end.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public bool Read()
    {
        if (Defect != RowDefect.None)
        {
            GoOnBehindTheLine();
        }

        malformed = null;
        try
        {
            if (!reader.Read())
            {
                return false;
            }
        }
        catch (CsvFormatException tooLong)
        {
            (Line, Count, Defect) = (linesBefore + tooLong.LineNumber, 0, RowDefect.TooLong);
            return true;
        }

        (Line, Count) = (linesBefore + reader.LineNumber, reader.FieldCount);
        Defect = malformed switch
        {
            CsvMalformedReason.UnterminatedQuote => RowDefect.QuoteNotClosed,
            CsvMalformedReason.TextAfterClosingQuote => RowDefect.TextAfterQuote,
            _ => RowDefect.None,
        };
        return true;
    }

    /// <inheritdoc/>
    public void Dispose() => reader.Dispose();

    /// <summary>Begins anew behind the first line of the bad row.</summary>
    private void GoOnBehindTheLine()
    {
        bytesBefore = Defect == RowDefect.TooLong
            ? file.SkipLines(bytesBefore, Line - linesBefore)
            : file.SkipLines(bytesBefore + reader.ByteOffset, 1);
        linesBefore = Line;
        Defect = RowDefect.None;
        reader.Dispose();
        reader = From(beginning: false);
    }

    /// <summary>A reader from where the file is; a first line <c>sep=;</c>, which spreadsheet programs write, is no row.</summary>
    private CsvReader From(bool beginning) => CsvReader.Create(
        file,
        new CsvReaderOptions
        {
            Separator = delimiter,
            CommentPrefix = commentPrefix,
            HasHeader = false,
            TrackLineNumbers = true,
            MaxRecordSize = LongestRow,
            DetectSeparatorHint = beginning,
            OnMalformedRecord = record => malformed = record.Reason,
        },
        leaveOpen: true);
}
