using System.Diagnostics;
using System.Text;
using System.Text.Json;
using Tarry.Imports.DelimitedText;
using Tarry.Metrology;
using Tarry.Tests;

namespace Tarry.Imports.Tests.DelimitedText;

public class RowReaderTests
{
    // RFC 4180, section 2, numbers as there: rule 1 to 3 line breaks, 5 to 7 quotation marks.
    [Theory]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b~~bb|ccc/zzz|yyy|xxx")]
    [InlineData("\"aaa\",\"b\"\"bb\",\"ccc\"", "aaa|b\"bb|ccc")]
    [InlineData("a b , c,", "a b | c|")]
    public void Read_Rfc4180Example_GivesItsCells(string text, string expected) =>
        Assert.Equal(expected, Shown(text));

    [Theory]
    [InlineData("a,b\rc,d\n\n\r\n# a comment, with \"quotes\ne,f", "a|b/c|d/e|f")]
    [InlineData("\uFEFFa,b\n", "a|b")]
    [InlineData("\"\",\"\"\n", "|")]
    [InlineData("5\" pad,x\n", "5\" pad|x")]
    [InlineData("", "")]
    public void Read_WhatFilesAlsoHold_IsPassedOverOrKept(string text, string expected) =>
        Assert.Equal(expected, Shown(text));

    [Fact]
    public void Read_QuoteThatIsNeverClosed_CostsItsOwnLineOnly()
    {
        var filler = string.Concat(Enumerable.Range(0, 20_000).Select(number => $"{number},value\n"));
        foreach (var (mark, rest) in new[] { ("", "c,d\ne,f\n"), ("", filler), ("\uFEFF", "c,d\ne,f\n"), ("\uFEFF", filler) })
        {
            var rows = Rows(mark + "a,b\n# comment\n\nx,\"y\n" + rest);
            Assert.Equal((4L, false), (rows[1].Line, rows[1].Defect == RowDefect.None));
            Assert.Equal(1 + 1 + rest.Count(character => character == '\n'), rows.Count);
            Assert.All(rows.Skip(2), row => Assert.Equal(RowDefect.None, row.Defect));
            Assert.Equal(Enumerable.Range(5, rows.Count - 2).Select(line => (long)line), rows.Skip(2).Select(row => row.Line));
        }
    }

    [Fact]
    public void Read_TwoStrayOpeningQuotes_CostTwoLines()
    {
        var rows = Rows("a,b\nx,\"y\nc,d\nz,\"w\ne,f\n");
        Assert.Equal([1, 2, 3, 4, 5], rows.Select(row => row.Line));
        Assert.Equal([true, false, true, false, true], rows.Select(row => row.Defect == RowDefect.None));
        Assert.Equal("e|f", string.Join('|', rows[4].Cells));
    }

    [Fact]
    public void Read_LineLongerThanTheLongestRow_IsOneDefectAndTheNextIsRead()
    {
        var rows = Rows("a,b\n" + new string('x', 10 * RowReader.LongestRow) + "\r\nc,d\n");
        Assert.Equal([RowDefect.None, RowDefect.TooLong, RowDefect.None], rows.Select(row => row.Defect));
        Assert.Equal([1, 2, 3], rows.Select(row => row.Line));
    }

    // Reference: the csv module of Python 3, csv.reader(file) with its defaults (dialect 'excel'), newline=''.
    [Fact]
    public void Read_GeneratedNastyFiles_AgreesWithPythonsCsvModule()
    {
        var python = Requirement.Program("python3", "python3");
        using var folder = new TemporaryFolder();
        var random = new SeededGenerator(4180);
        string[] pieces = ["a", "", " ", "1.5", "\"\"", ",", ";", "\t", "\n", "\r\n", "\r", "µ", "日本", "'", "=1+1", "# no comment", "x y"];
        string[] ends = ["\n", "\r\n"];
        var paths = new List<string>();
        for (var number = 0; number < 60; number++)
        {
            var text = new StringBuilder();
            var rows = 1 + random.NextInt32(40);
            for (var row = 0; row < rows; row++)
            {
                text.Append("row");
                for (var cell = random.NextInt32(8); cell > 0; cell--)
                {
                    var content = string.Concat(Enumerable.Range(0, random.NextInt32(5)).Select(_ => pieces[random.NextInt32(pieces.Length)]));
                    var needsQuotes = content.AsSpan().ContainsAny("\",\r\n");
                    text.Append(',').Append(needsQuotes || random.NextInt32(3) == 0 ? $"\"{content}\"" : content);
                }

                text.Append(row + 1 == rows && random.NextInt32(2) == 0 ? "" : ends[random.NextInt32(2)]);
            }

            paths.Add(folder.Write($"{number}.csv", text.ToString()));
        }

        const string Program = "import csv, json, sys\nprint(json.dumps([[row for row in csv.reader(open(path, encoding='utf-8', newline='')) if row] for path in sys.argv[1:]]))";
        using var process = Process.Start(new ProcessStartInfo(python, ["-c", Program, .. paths]) { RedirectStandardOutput = true })!;
        var expected = JsonSerializer.Deserialize<string[][][]>(process.StandardOutput.ReadToEnd())!;
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        for (var number = 0; number < paths.Count; number++)
        {
            var rows = Rows(File.ReadAllText(paths[number]));
            Assert.All(rows, row => Assert.Equal(RowDefect.None, row.Defect));
            Assert.Equal(expected[number], rows.Select(row => row.Cells));
        }
    }

    private static string Shown(string text) =>
        string.Join('/', Rows(text).Select(row => string.Join('|', row.Cells).Replace('\r', '~').Replace('\n', '~')));

    private static List<(long Line, RowDefect Defect, string[] Cells)> Rows(string text)
    {
        using var folder = new TemporaryFolder();
        using var file = new HashedFile(File.OpenRead(folder.Write("rows.csv", text)));
        using var reader = new RowReader(file, ',', '#');
        var rows = new List<(long, RowDefect, string[])>();
        while (reader.Read())
        {
            var cells = new string[reader.Count];
            for (var index = 0; index < cells.Length; index++)
            {
                cells[index] = reader[index].ToString();
            }

            rows.Add((reader.Line, reader.Defect, cells));
        }

        return rows;
    }
}
