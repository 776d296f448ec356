using System.Globalization;
using System.Text;

namespace Tarry.Rig.Frames;

/// <summary>What one line came to: a frame, or the name of what is wrong with it. Always with its bytes.</summary>
/// <param name="Bytes">The line without its line feed; of a line that is too long, its first 80 bytes.</param>
/// <param name="Length">How many bytes the line had.</param>
/// <param name="Frame">The frame, or null if it is bad.</param>
/// <param name="Error">What is wrong with it, or null if it is good.</param>
public sealed record FrameResult(ReadOnlyMemory<byte> Bytes, long Length, RigFrame? Frame, FrameError? Error)
{
    /// <summary>The error and the bytes for a log: printable ASCII as it is, other bytes and <c>\</c> as <c>\x</c> and two hex digits.</summary>
    public string Describe()
    {
        var text = new StringBuilder(Error?.InWords() ?? "good frame").Append(": ");
        foreach (var value in Bytes.Span)
        {
            if (value is < 0x20 or > 0x7e or (byte)'\\')
            {
                text.Append(CultureInfo.InvariantCulture, $"\\x{value:x2}");
            }
            else
            {
                text.Append((char)value);
            }
        }

        return Length > Bytes.Length
            ? text.Append(CultureInfo.InvariantCulture, $"... ({Length} bytes)").ToString()
            : text.ToString();
    }
}
