using System.Globalization;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;
using Tarry.Studies.Trials;

namespace Tarry.Imports.DelimitedText;

/// <summary>Reads one file.</summary>
internal sealed class FileImport(
    string path, DelimitedTextOptions options, SessionRegister register, IProgress<ImportProgress>? progress, CancellationToken cancellation)
{
    private const int RowsBetweenReports = 65_536;

    /// <summary>Each is an entry of the study file, which a person reads.</summary>
    private const int MostExclusions = 500;
    private readonly string fileName = Path.GetFileName(path);
    private readonly Dictionary<(string Sitting, string Condition), ImportedFileSession> sessions = [];
    private readonly List<ImportedCondition> conditions = [];
    private readonly RefusalLog refusals = new();
    private long rowsRead;
    private long rowsKept;
    private long rowsUnassigned;

    /// <summary>Reads the file to its end.</summary>
    /// <exception cref="ImportException">It cannot be read, has no usable header, or nothing of it could be kept.</exception>
    public ImportPlan Read()
    {
        using var file = OpenedFile.Open(path);
        try
        {
            var delimiter = options.Delimiter ?? file.InferDelimiter(options.CommentPrefix);
            using var rows = new RowReader(file.Content, delimiter, options.CommentPrefix);
            if (options.Header is null && !rows.Read())
            {
                throw new ImportException("The file has no header.", fileName, "Give a file with a header and at least one row.");
            }

            var columns = options.Header is { } names ? HeaderReader.Of(names, fileName, options) : HeaderReader.Read(rows, fileName, options);
            var values = new RowValues(columns, options.DecimalComma);
            while (rows.Read())
            {
                rowsRead++;
                ReadRow(rows, columns, values);
                if (rowsRead % RowsBetweenReports == 0)
                {
                    cancellation.ThrowIfCancellationRequested();
                    progress?.Report(new ImportProgress(fileName, file.Content.Position, file.Content.Length, rowsRead));
                }
            }

            RequireSomething(columns);
            return Plan(columns, new ReadingNotes(columns, options, delimiter, values.Rounded), file.Content.Sha256);
        }
        catch (IOException failure)
        {
            throw new ImportException($"Reading stopped after {rowsRead} rows: {failure.Message}", fileName, "Check the disk or the connection and import again.", failure);
        }
    }

    private void ReadRow(RowReader row, ColumnMap columns, RowValues values)
    {
        var read = ImportedRow.At(row.Line);
        if (row.Defect != RowDefect.None)
        {
            Refuse(Known(row, columns), read, new RowRefusal(RowProblem.CannotBeSplit, RowText.Describe(row)));
            return;
        }

        if (row.Count != columns.Count)
        {
            Refuse(Known(row, columns), read, new RowRefusal(RowProblem.WrongNumberOfCells, $"{row.Count} cells, where the header has {columns.Count}"));
            return;
        }

        var condition = register.Conditions.Resolve(Cell(row, columns.Condition, options.Condition));
        var sitting = register.Sittings.Resolve(Cell(row, columns.Sitting, options.Sitting));
        if ((condition.Problem ?? sitting.Problem) is { } problem)
        {
            Refuse(null, read, new RowRefusal(RowProblem.NoSession, problem));
            return;
        }

        var session = Session(row, columns, condition.Kept!, sitting.Name!).Rows;
        var conflict = condition.Kept!.Take(row, columns, options.DecimalComma);
        var refusal = values.Read(row, ref read) ?? conflict ?? session.Add(read);
        if (refusal is { } refused)
        {
            Refuse(session, read, refused);
        }
        else
        {
            rowsKept++;
        }
    }

    private ImportedFileSession Session(RowReader row, ColumnMap columns, ImportedCondition condition, string sitting)
    {
        if (sessions.TryGetValue((sitting, condition.Id), out var known))
        {
            return known;
        }

        var key = new SessionKey(sitting, condition.Id);
        register.Claim(key, fileName, $"{fileName} line {row.Line}");
        var session = new ImportedFileSession(
            key,
            Cell(row, columns.Sitting, options.Sitting).Trim().ToString(),
            Cell(row, columns.Condition, options.Condition).Trim().ToString(),
            new SessionBuilder(key, columns.Sequence >= 0));
        sessions.Add((sitting, condition.Id), session);
        if (!conditions.Contains(condition))
        {
            conditions.Add(condition);
        }

        return session;
    }

    /// <summary>The session of a row that is not whole: only one that whole rows have named, since its cells may be displaced.</summary>
    private SessionBuilder? Known(RowReader row, ColumnMap columns)
    {
        if (columns.Condition >= row.Count || columns.Sitting >= row.Count)
        {
            return null;
        }

        var condition = register.Conditions.Find(Cell(row, columns.Condition, options.Condition))?.Name;
        var sitting = register.Sittings.Find(Cell(row, columns.Sitting, options.Sitting))?.Name;
        return condition is not null && sitting is not null && sessions.TryGetValue((sitting, condition), out var known) ? known.Rows : null;
    }

    private static ReadOnlySpan<char> Cell(RowReader row, int column, string? fixedText) => column < 0 ? fixedText : row[column];

    private void Refuse(SessionBuilder? session, ImportedRow row, RowRefusal refusal)
    {
        var item = new RefusedItem($"{fileName} line {row.Line}", refusal.Reason);
        refusals.Add(refusal.Problem, item);
        if (session is null)
        {
            rowsUnassigned++;
        }
        else
        {
            session.AddRefused(row, item);
        }
    }

    private void RequireSomething(ColumnMap columns)
    {
        if (rowsRead == 0)
        {
            throw new ImportException("There are no rows below the header.", fileName, "Give a file with at least one row.");
        }

        if (rowsKept == 0)
        {
            var first = refusals.Items[0];
            var reasons = string.Join("; ", refusals.ByReason.Select(pair => string.Create(CultureInfo.InvariantCulture, $"{pair.Key} ({pair.Value})")));
            throw new ImportException(
                $"None of the {rowsRead} rows could be kept: {reasons}. The first: {first.Reason}.",
                first.Place,
                $"Check that the columns ({string.Join(", ", columns.Header.Take(20))}) hold what their names say, and the options for delimiter, decimal comma and units.");
        }
    }

    private ImportPlan Plan(ColumnMap columns, ReadingNotes notes, string sha256)
    {
        var source = new SourceFile(fileName, sha256, DelimitedTextImport.Format, notes.Options, rowsRead);
        var built = new List<(SessionRecord, IReadOnlyList<Trial>)>();
        var exclusions = new List<Exclusion>();
        foreach (var session in sessions.Values.OrderBy(session => session.Key))
        {
            built.Add(session.Rows.Build(source with { Options = notes.ForSession(session) }));
            exclusions.AddRange(session.Rows.Exclusions(fileName));
            session.Rows.Release();
        }

        if (exclusions.Count > MostExclusions)
        {
            throw new ImportException(
                $"The column {columns.Header[columns.Excluded]} sets trials aside in {exclusions.Count} separate stretches, more than the {MostExclusions} that a study file takes from an import.",
                fileName,
                "Import without that column, and set whole stretches aside with [[exclude]] and a reason.");
        }

        var leftAside = conditions.Where(condition => condition.Unstated.Any())
            .Select(condition => $"the study file does not state {string.Join(", ", condition.Unstated)} of {condition.Id}; the file's levels are left aside")
            .ToList();
        return new ImportPlan
        {
            Sessions = built,
            NewConditions = [.. conditions.Where(condition => condition.IsNew).Select(condition => condition.Declare())],
            Exclusions = exclusions,
            Record = new ImportRecord
            {
                FileName = fileName,
                Sha256 = sha256,
                Format = DelimitedTextImport.Format,
                Options = notes.Options,
                RowsRead = rowsRead,
                RowsKept = rowsKept,
                RefusedTotal = rowsRead - rowsKept,
                RefusedByReason = refusals.ByReason,
                Refused = refusals.Items,
                RefusedUnassigned = rowsUnassigned,
            },
            Notes = [.. notes.Lines, .. RenamingNotes(), .. leftAside],
        };
    }

    private IEnumerable<string> RenamingNotes() =>
        sessions.Values.SelectMany(session => new[]
            {
                (What: "sitting", Text: session.SittingText, Name: session.Key.Sitting),
                (What: "condition", Text: session.ConditionText, Name: session.Key.Condition),
            })
            .Where(name => name.Text != name.Name)
            .Distinct()
            .Select(name => $"the {name.What} {Excerpt.Of(name.Text)} is named {name.Name}");
}
