using System.Globalization;
using System.IO.Hashing;
using System.Text;
using System.Text.Unicode;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Journals;

/// <summary>One line of a journal: its checksum and its content, as <c>docs/study-format.md</c> has them.</summary>
internal static class JournalLine
{
    public const int ChecksumLength = 8;

    /// <summary>CRC-32C (Castagnoli): polynomial 0x1edc6f41, reflected, start and final xor all ones; RFC 3720 appendix B.4.</summary>
    public static uint Crc32C(ReadOnlySpan<byte> bytes) => Crc32.HashToUInt32(Crc32ParameterSet.Crc32C, bytes);

    /// <summary>The line with its line feed.</summary>
    public static byte[] Encode(string session, long number, string content)
    {
        var line = Encoding.UTF8.GetBytes($"{new string(' ', ChecksumLength)} {content}\n");
        Checksum(session, number, line.AsSpan()[(ChecksumLength + 1)..^1], line);
        return line;
    }

    /// <summary>The content of a line without its line feed; false if the checksum is not its own.</summary>
    public static bool TryDecode(string session, long number, ReadOnlySpan<byte> line, out ReadOnlySpan<byte> content)
    {
        content = default;
        if (line.Length <= ChecksumLength || line[ChecksumLength] != (byte)' ')
        {
            return false;
        }

        content = line[(ChecksumLength + 1)..];
        Span<byte> expected = stackalloc byte[ChecksumLength];
        Checksum(session, number, content, expected);
        // Compared as text: a capital digit is a flipped bit.
        return line[..ChecksumLength].SequenceEqual(expected);
    }

    public static string Trial(Trial trial) => string.Create(
        CultureInfo.InvariantCulture,
        $"t {trial.Sequence} {trial.Segment} {Optional(trial.PressTicks)} {Optional(trial.LatencyTicks)} {Optional(trial.LatencyHighTicks)} {(int)trial.Outcome} {(int)trial.Flags} {trial.Edges}");

    /// <summary>Reads what follows <c>t</c>.</summary>
    /// <exception cref="FormatException">It is not a trial.</exception>
    public static Trial ReadTrial(ReadOnlySpan<byte> fields)
    {
        var trial = new Trial(
            Number(ref fields),
            checked((int)Number(ref fields)),
            OptionalNumber(ref fields),
            OptionalNumber(ref fields),
            OptionalNumber(ref fields),
            (Outcome)Number(ref fields),
            (TrialFlags)Number(ref fields),
            checked((int)Number(ref fields)));
        return fields.IsEmpty ? trial : throw new FormatException("a trial has 8 fields, and there are more");
    }

    private static void Checksum(string session, long number, ReadOnlySpan<byte> content, Span<byte> digits)
    {
        var crc = new Crc32(Crc32ParameterSet.Crc32C);
        Span<byte> heading = stackalloc byte[256];
        Utf8.TryWrite(heading, CultureInfo.InvariantCulture, $"{session} {number} ", out var length);
        crc.Append(heading[..length]);
        crc.Append(content);
        crc.GetCurrentHashAsUInt32().TryFormat(digits, out _, "x8", CultureInfo.InvariantCulture);
    }

    private static string Optional(long? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "-";

    private static long Number(ref ReadOnlySpan<byte> fields) =>
        OptionalNumber(ref fields) ?? throw new FormatException("a number is missing in a trial");

    private static long? OptionalNumber(ref ReadOnlySpan<byte> fields)
    {
        var space = fields.IndexOf((byte)' ');
        var field = space < 0 ? fields : fields[..space];
        fields = space < 0 ? default : fields[(space + 1)..];
        return field.SequenceEqual("-"u8) ? null : long.Parse(field, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
    }
}
