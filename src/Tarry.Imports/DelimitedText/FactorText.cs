using System.Text.RegularExpressions;

namespace Tarry.Imports.DelimitedText;

/// <summary>Factor levels as cells, in and out.</summary>
/// <remarks>
/// A spreadsheet program takes a cell that begins with <c>= + - @</c>, tab or carriage return for a formula, so such a level goes out
/// with an apostrophe before it (OWASP, "CSV Injection") and loses it on the way in. A level that begins with apostrophes and such a
/// character gets one more, so that what comes back is what went out.
/// </remarks>
internal static partial class FactorText
{
    private const string FormulaStarts = "=+-@\t\r";

    /// <summary>A level from a cell: line breaks and the spaces around them become one space, and the apostrophe before a formula sign goes.</summary>
    public static ReadOnlySpan<char> Clean(ReadOnlySpan<char> cell)
    {
        cell = cell.Trim();
        if (cell.StartsWith('\'') && IsFormulaBehindApostrophes(cell))
        {
            cell = cell[1..];
        }

        return cell.ContainsAny('\r', '\n') ? LineBreaks().Replace(cell.ToString(), " ") : cell;
    }

    /// <summary>A level as a cell that is safe in a spreadsheet program, quoted where RFC 4180 asks for it.</summary>
    public static string ToCell(string level)
    {
        var safe = IsFormulaBehindApostrophes(level) ? "'" + level : level;
        return safe.AsSpan().ContainsAny(",\"\r\n") || safe != safe.Trim() || safe.StartsWith('#')
            ? "\"" + safe.Replace("\"", "\"\"", StringComparison.Ordinal) + "\""
            : safe;
    }

    private static bool IsFormulaBehindApostrophes(ReadOnlySpan<char> text)
    {
        text = text.TrimStart('\'');
        return text.Length > 0 && FormulaStarts.Contains(text[0], StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\s*[\r\n]+\s*")]
    private static partial Regex LineBreaks();
}
