using System.Globalization;

namespace Tarry.Rig.Frames;

/// <summary>From a line to the body whose checksum agrees, and back. Both directions share it.</summary>
internal static class FrameCheck
{
    private const int ChecksumDigits = 4;

    /// <summary>The error of a line, or null and its body.</summary>
    public static FrameError? Check(ReadOnlySpan<byte> line, long length, out string body)
    {
        body = "";
        if (length > LineReader.MaximumLength)
        {
            return FrameError.TooLong;
        }

        if (line.ContainsAnyExceptInRange((byte)0x20, (byte)0x7e))
        {
            return FrameError.NotAscii;
        }

        var star = line.LastIndexOf((byte)'*');
        if (star < 0)
        {
            return FrameError.NoChecksum;
        }

        var digits = line[(star + 1)..];
        if (digits.Length != ChecksumDigits || !HexField.TryRead(digits, out var stated))
        {
            return FrameError.ChecksumNotHex;
        }

        if (stated != Crc16.Compute(line[..star]))
        {
            return FrameError.ChecksumWrong;
        }

        body = System.Text.Encoding.ASCII.GetString(line[..star]);
        return null;
    }

    /// <summary>A body with its checksum and line feed.</summary>
    public static byte[] Seal(string body)
    {
        var bytes = new byte[body.Length + ChecksumDigits + 2];
        System.Text.Encoding.ASCII.GetBytes(body, bytes);
        var crc = Crc16.Compute(bytes.AsSpan(0, body.Length));
        bytes[body.Length] = (byte)'*';
        crc.TryFormat(bytes.AsSpan(body.Length + 1), out _, "x4", CultureInfo.InvariantCulture);
        bytes[^1] = 0x0a;
        return bytes;
    }
}
