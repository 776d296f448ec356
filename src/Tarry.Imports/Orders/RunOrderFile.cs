using System.Globalization;
using Tarry.Imports.DelimitedText;
using Tarry.Studies.Sessions;

namespace Tarry.Imports.Orders;

/// <summary>The order of a study's runs as <c>tarry plan --order</c> writes it, or as a person does: CSV with the columns <c>sitting</c>, <c>step</c>, <c>condition</c>, and <c>trials</c> and <c>seed</c> where it has them.</summary>
public static class RunOrderFile
{
    /// <summary>What it is called in a study folder.</summary>
    public const string Name = "order.csv";

    private const int MostRows = 100_000;
    private const string Remedy = "Write it again with 'tarry plan STUDY --order', or correct the row.";
    private static readonly string[] Needed = ["sitting", "step", "condition"];

    /// <summary>The steps of a study's order, by sitting as they come in the file and then by step; none where the study has no order.</summary>
    /// <param name="studyFolder">The study folder.</param>
    /// <exception cref="ImportException">It cannot be read, or a row is wrong; the place says which.</exception>
    public static IReadOnlyList<OrderedStep> Read(string studyFolder)
    {
        var path = Path.Combine(studyFolder, Name);
        if (!File.Exists(path))
        {
            return [];
        }

        try
        {
            using var file = File.OpenRead(path);
            using var hashed = new HashedFile(file);
            using var rows = new RowReader(hashed, ',', '#');
            var steps = Rows(rows).ToList();
            var doubled = steps.GroupBy(step => (step.Sitting, step.Condition)).FirstOrDefault(group => group.Count() > 1);
            return doubled is null
                ? [.. steps.GroupBy(step => step.Sitting).SelectMany(sitting => sitting.OrderBy(step => step.Step))]
                : throw new ImportException($"The condition {doubled.Key.Condition} stands twice in {doubled.Key.Sitting}.", Name, "Leave each condition once in a sitting.");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new ImportException($"It cannot be read: {exception.Message}", Name, "Check who may read the file.", exception);
        }
    }

    private static IEnumerable<OrderedStep> Rows(RowReader rows)
    {
        string[]? columns = null;
        for (var read = 0; rows.Read(); read++)
        {
            if (rows.Defect != RowDefect.None || read > MostRows)
            {
                throw Wrong(rows, read > MostRows ? "There are more rows than any order has." : "A quotation mark is not closed, or the row is too long.");
            }

            var cells = Enumerable.Range(0, rows.Count).Select(index => rows[index].Trim().ToString()).ToArray();
            if (columns is not null)
            {
                yield return Step(rows, columns, cells);
                continue;
            }

            columns = cells;
            if (Needed.Except(columns).FirstOrDefault() is { } missing)
            {
                throw Wrong(rows, $"There is no column '{missing}'.");
            }
        }
    }

    private static OrderedStep Step(RowReader rows, string[] columns, string[] cells)
    {
        string? Cell(string column) => Array.IndexOf(columns, column) is >= 0 and var index && index < cells.Length && cells[index].Length > 0 ? cells[index] : null;
        string Name(string column) => Cell(column) is { } text && Names.IsName(text) ? text : throw Wrong(rows, $"The {column} '{Cell(column)}' is not a name.");
        long? Number(string column, long most) => Cell(column) is not { } text ? null
            : long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= 1 && value <= most ? value
            : throw Wrong(rows, $"The {column} '{text}' is not a whole number from 1.");
        return new OrderedStep(
            Name("sitting"),
            (int)(Number("step", int.MaxValue) ?? throw Wrong(rows, "The step is missing.")),
            Name("condition"),
            Number("trials", long.MaxValue),
            (uint?)Number("seed", uint.MaxValue));
    }

    private static ImportException Wrong(RowReader rows, string problem) =>
        new(problem, string.Create(CultureInfo.InvariantCulture, $"{Name}, line {rows.Line}"), Remedy);
}
