namespace Tarry.Imports.DelimitedText;

/// <summary>What is wrong with a row that could not be split, in words.</summary>
internal static class RowText
{
    public static string Describe(RowReader row) => row.Defect switch
    {
        RowDefect.TooLong => $"The row is longer than {RowReader.LongestRow} bytes, or a quotation mark in it is opened and not closed.",
        RowDefect.QuoteNotClosed => "A quotation mark is opened and not closed; a mark inside a quoted cell is doubled.",
        RowDefect.TextAfterQuote => "Text follows a closing quotation mark; a mark inside a quoted cell is doubled.",
        _ => throw new ArgumentException("The row is sound.", nameof(row)),
    };
}
