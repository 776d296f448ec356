using System.Globalization;
using System.IO.Hashing;
using System.Text;
using Tarry.Studies.Trials;

namespace Tarry.Studies.Journals;

/// <summary>One line of a journal: its checksum and its content, as <c>docs/study-format.md</c> has them.</summary>
internal static class JournalLine
{
    public const int ChecksumLength = 8;

    /// <summary>CRC-32C (Castagnoli): polynomial 0x1edc6f41, reflected, start and final xor all ones; RFC 3720 appendix B.4.</summary>
    public static uint Crc32C(ReadOnlySpan<byte> bytes) => Crc32.HashToUInt32(Crc32ParameterSet.Crc32C, bytes);

    /// <summary>The line with its line feed.</summary>
    public static byte[] Encode(string session, long number, string content) =>
        Encoding.UTF8.GetBytes($"{Checksum(session, number, Encoding.UTF8.GetBytes(content))} {content}\n");

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
        // Compared as text: a capital digit is a flipped bit.
        return Encoding.ASCII.GetBytes(Checksum(session, number, content), expected) == ChecksumLength && line[..ChecksumLength].SequenceEqual(expected);
    }

    public static string Trial(Trial trial) => string.Create(
        CultureInfo.InvariantCulture,
        $"t {trial.Sequence} {trial.Segment} {Optional(trial.PressTicks)} {Optional(trial.LatencyTicks)} {Optional(trial.LatencyHighTicks)} {(int)trial.Outcome} {(int)trial.Flags} {trial.Edges}");

    /// <summary>Reads what follows <c>t</c>.</summary>
    /// <exception cref="FormatException">It is not a trial.</exception>
    public static Trial ReadTrial(string fields)
    {
        var parts = fields.Split(' ');
        return parts.Length == 8
            ? new Trial(Number(parts[0]), (int)Number(parts[1]), OptionalNumber(parts[2]), OptionalNumber(parts[3]), OptionalNumber(parts[4]), (Outcome)Number(parts[5]), (TrialFlags)Number(parts[6]), (int)Number(parts[7]))
            : throw new FormatException($"A trial has 8 fields, not {parts.Length}.");
    }

    private static string Checksum(string session, long number, ReadOnlySpan<byte> content)
    {
        var crc = new Crc32(Crc32ParameterSet.Crc32C);
        crc.Append(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{session} {number} ")));
        crc.Append(content);
        return crc.GetCurrentHashAsUInt32().ToString("x8", CultureInfo.InvariantCulture);
    }

    private static string Optional(long? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "-";

    private static long Number(string text) => long.Parse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    private static long? OptionalNumber(string text) => text == "-" ? null : Number(text);
}
