namespace Tarry.Imports.DelimitedText;

/// <summary>Why a row could not be split into cells.</summary>
internal enum RowDefect
{
    None,
    TooLong,
    QuoteNotClosed,
    TextAfterQuote,
}
