using System.Text;

namespace Tarry.Imports.HidReports;

/// <summary>A report descriptor in a file of its own: raw bytes, or hex digits in text.</summary>
public static class HidDescriptorFile
{
    /// <summary>The bytes of the descriptor: of text that is nothing but hex digits (with spaces, commas, <c>0x</c>, line ends) those that it spells, else the content itself.</summary>
    /// <param name="content">The content of the file.</param>
    /// <exception cref="ImportException">It is empty, other text, or longer than a descriptor can be.</exception>
    public static byte[] Read(ReadOnlySpan<byte> content)
    {
        var hex = FromHex(content);
        if (hex is null && IsText(content))
        {
            throw new ImportException("This is text, but no hex digits.", "the file", "Give a packet capture, or a report descriptor as bytes or as hex digits.");
        }

        var bytes = hex ?? content.ToArray();
        return bytes.Length is > 0 and <= HidReportDescriptor.LongestDescriptor
            ? bytes
            : throw new ImportException($"A report descriptor has 1 to {HidReportDescriptor.LongestDescriptor} bytes, and this has {bytes.Length}.", "the file", "Give a packet capture, or a report descriptor as bytes or as hex digits.");
    }

    // No descriptor is readable text: each begins with an item of a page or usage, and its data is a control character.
    private static bool IsText(ReadOnlySpan<byte> content) =>
        !content.IsEmpty && !content.ContainsAnyExceptInRange((byte)0x09, (byte)0x7E) && !content.ContainsAnyInRange((byte)0x0E, (byte)0x1F);

    private static byte[]? FromHex(ReadOnlySpan<byte> content)
    {
        if (!Ascii.IsValid(content))
        {
            return null;
        }

        var words = Encoding.ASCII.GetString(content).Split([' ', '\t', '\r', '\n', ',', ';'], StringSplitOptions.RemoveEmptyEntries);
        var digits = string.Concat(words.Select(word => word.StartsWith("0x", StringComparison.OrdinalIgnoreCase) ? word[2..].PadLeft(2, '0') : word));
        return digits.Length > 0 && digits.Length % 2 == 0 && digits.All(char.IsAsciiHexDigit) ? Convert.FromHexString(digits) : null;
    }
}
