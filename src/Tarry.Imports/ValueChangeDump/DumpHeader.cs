using System.Globalization;
using System.Text;
using Tarry.Imports.Recordings;

namespace Tarry.Imports.ValueChangeDump;

/// <summary>What stands before the changes of a dump: its time scale and its variables.</summary>
internal sealed class DumpHeader
{
    /// <summary>As many variables as a large design has; each is kept in memory.</summary>
    private const int MostNets = 1_000_000;
    private const int LongestName = 4_096;
    private readonly List<string> scopes = [];
    private readonly List<DumpNet> nets = [];

    public IReadOnlyList<DumpNet> Nets => nets;

    /// <summary>Ticks a second.</summary>
    public long TickHz { get; private set; }

    /// <summary>How many ticks a unit of the dump's times has: more than one only where the unit is longer than a second.</summary>
    public long TicksPerUnit { get; private set; } = 1;

    /// <summary>Reads up to <c>$enddefinitions $end</c>.</summary>
    /// <exception cref="DamagedRecordingException">This is no header.</exception>
    public static DumpHeader Read(TokenScanner tokens)
    {
        var header = new DumpHeader();
        while (tokens.Next(out var token))
        {
            if (token[0] != '$')
            {
                throw new DamagedRecordingException(tokens.Offset, "A value change dump begins with sections such as '$timescale 1 ns $end'; this is something else.");
            }

            var keyword = Text(token);
            var offset = tokens.Offset;
            var words = SectionWords(tokens, keyword, offset, kept: keyword is "$timescale" or "$scope" or "$var");
            switch (keyword)
            {
                case "$timescale":
                    header.TakeTimescale(string.Concat(words), offset);
                    break;
                case "$scope":
                    header.scopes.Add(words.Count > 1 ? words[1] : "");
                    break;
                case "$upscope" when header.scopes.Count > 0:
                    header.scopes.RemoveAt(header.scopes.Count - 1);
                    break;
                case "$var":
                    header.TakeVariable(words, offset);
                    break;
                case "$enddefinitions":
                    return header.TickHz > 0 ? header : throw new DamagedRecordingException(offset, "The header has no $timescale, so that the times have no unit.");
                default:
                    // Dates, versions, comments and what a tool adds of its own.
                    break;
            }
        }

        throw new DamagedRecordingException(tokens.Offset, "The file ends within the header, before $enddefinitions.");
    }

    private static List<string> SectionWords(TokenScanner tokens, string keyword, long offset, bool kept)
    {
        var words = new List<string>();
        var length = 0;
        while (tokens.Next(out var token))
        {
            if (token.SequenceEqual("$end"u8))
            {
                return words;
            }

            if (kept)
            {
                words.Add(Text(token));
                length += token.Length + 1;
                if (length > LongestName)
                {
                    break;
                }
            }
        }

        throw new DamagedRecordingException(offset, $"The section {keyword} has no $end.");
    }

    private static string Text(ReadOnlySpan<byte> token) => Encoding.UTF8.GetString(token);

    private void TakeTimescale(string text, long offset)
    {
        var digits = text.TakeWhile(char.IsAsciiDigit).Count();
        var exponent = text[digits..] switch { "s" => 0, "ms" => 3, "us" => 6, "ns" => 9, "ps" => 12, "fs" => 15, _ => -1 };
        var number = text[..digits] switch { "1" => 1, "10" => 10, "100" => 100, _ => 0 };
        if (exponent < 0 || number == 0)
        {
            throw new DamagedRecordingException(offset, $"The time scale '{text[..Math.Min(text.Length, 40)]}' is none; there are 1, 10 and 100 of s, ms, us, ns, ps and fs.");
        }

        var unitsASecond = (long)Math.Pow(10, exponent);
        TickHz = Math.Max(1, unitsASecond / number);
        TicksPerUnit = exponent == 0 ? number : 1;
    }

    private void TakeVariable(List<string> words, long offset)
    {
        // var TYPE WIDTH IDENTIFIER NAME [RANGE]: a name may hold blanks.
        if (words.Count < 4 || !int.TryParse(words[1], NumberStyles.None, CultureInfo.InvariantCulture, out var width) || width < 1)
        {
            throw new DamagedRecordingException(offset, "A variable is declared by type, width, identifier and name; this $var is not.");
        }

        if (nets.Count == MostNets)
        {
            throw new DamagedRecordingException(offset, $"The header declares more than {MostNets} variables.");
        }

        var (left, right) = (width - 1, 0);
        var name = string.Join(' ', words.Skip(3));
        var range = name.EndsWith(']') ? name.LastIndexOf('[') : -1;
        if (range > 0)
        {
            var index = name[(range + 1)..^1].Split(':');
            var isRange = index.Length == 2
                && int.TryParse(index[0], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out left)
                && int.TryParse(index[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out right);
            (left, right) = isRange && Math.Abs((long)left - right) + 1 == width ? (left, right) : (width - 1, 0);
            var stem = name[..range].TrimEnd();
            name = isRange ? stem : stem + name[range..];
        }

        var path = string.Join('.', [.. scopes.Where(scope => scope.Length > 0), name]);
        nets.Add(new DumpNet(words[2], path, name, words[0] is "real" or "realtime", width, left, right));
    }
}
