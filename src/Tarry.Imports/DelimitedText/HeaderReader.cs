using System.Collections.Immutable;

namespace Tarry.Imports.DelimitedText;

/// <summary>Finds the columns by their names in the header.</summary>
internal sealed class HeaderReader
{
    /// <summary>The factors that are known by name, in the order in which they are written.</summary>
    public static readonly ImmutableArray<string> KnownFactors = ["device", "unit", "device_firmware", "link", "layer", "control", "placement"];

    private readonly string[] header;
    private readonly bool[] used;
    private readonly string place;
    private readonly DelimitedTextOptions options;

    private HeaderReader(string[] header, string place, DelimitedTextOptions options)
    {
        (this.header, this.place, this.options) = (header, place, options);
        used = new bool[header.Length];
    }

    /// <summary>Reads the header row that the reader stands on.</summary>
    /// <exception cref="ImportException">It is no header, or a column that is needed is missing, doubled or without its unit.</exception>
    public static ColumnMap Read(RowReader row, string file, DelimitedTextOptions options)
    {
        var place = $"{file} line {row.Line}";
        if (row.Defect != RowDefect.None)
        {
            throw new ImportException(RowText.Describe(row), place, "The first line that is no comment must be a header with the names of the columns.");
        }

        var header = new string[row.Count];
        for (var index = 0; index < header.Length; index++)
        {
            header[index] = row[index].Trim().ToString();
            if (header[index].AsSpan().ContainsAny('\0', '\uFFFD'))
            {
                throw new ImportException("This is not UTF-8 text.", place, "Give a text file of delimited values, saved as UTF-8.");
            }
        }

        return new HeaderReader(header, place, options).Map();
    }

    /// <summary>Takes names that the user gave for the header of a file that has none.</summary>
    /// <exception cref="ImportException">A column that is needed is missing, doubled or without its unit.</exception>
    public static ColumnMap Of(IReadOnlyList<string> names, string file, DelimitedTextOptions options) =>
        new HeaderReader([.. names.Select(name => name.Trim())], file, options).Map();

    private ColumnMap Map()
    {
        var condition = NameColumn(options.ConditionColumn, options.Condition, "condition", ["condition"]);
        var sitting = NameColumn(options.SittingColumn, options.Sitting, "sitting", ["sitting", "session"]);
        var latency = TimeColumn(options.LatencyColumn, options.LatencyUnit, "latency");
        if (latency.Index < 0)
        {
            throw Missing("latency", "latency_us (or latency_ms, latency_s, latency_ns)", "--latency-column NAME");
        }

        var pressTime = TimeColumn(options.PressTimeColumn, options.PressTimeUnit, "press_time");
        var latencyHigh = TimeColumn(null, null, "latency_high");
        return new ColumnMap
        {
            Header = header,
            Condition = condition,
            Sitting = sitting,
            Sequence = Column(options.SequenceColumn, "--seq-column", "seq"),
            PressTime = pressTime.Index,
            PressTimeUnit = pressTime.Unit,
            Latency = latency.Index,
            LatencyUnit = latency.Unit,
            LatencyHigh = latencyHigh.Index,
            LatencyHighUnit = latencyHigh.Unit,
            Outcome = Column(options.OutcomeColumn, "--outcome-column", "outcome"),
            Flags = Column(null, "", "flags"),
            Edges = Column(null, "", "edges"),
            Excluded = Column(null, "", "excluded"),
            NominalReportHz = Column(null, "", "nominal_report_hz"),
            Factors = [.. FactorColumns()],
            Unused = [.. header.Where((_, index) => !used[index])],
        };
    }

    private int NameColumn(string? named, string? fixedName, string what, string[] usual)
    {
        var column = Column(named, $"--{what}-column", usual);
        if (column >= 0 && fixedName is not null)
        {
            throw new ImportException(
                $"The file has the column '{header[column]}', and --{what} {fixedName} was given as well.", place, "Leave one of them out: rows of several would be merged into one.");
        }

        return column >= 0 || fixedName is not null
            ? column
            : throw Missing(what, string.Join(" or ", usual), $"--{what}-column NAME, or --{what} ID if all rows are of one");
    }

    private (int Index, TimeUnit Unit) TimeColumn(string? named, TimeUnit? unit, string usual)
    {
        var option = $"--{usual.Replace("_", "-", StringComparison.Ordinal)}";
        var index = Column(named, $"{option}-column", usual, $"{usual}_us", $"{usual}_ms", $"{usual}_s", $"{usual}_ns");
        return index < 0
            ? (index, TimeUnit.Microseconds)
            : (index, unit ?? TimeUnits.FromSuffix(header[index])
                ?? throw new ImportException($"The unit of the column '{header[index]}' is not known.", place, $"Give {option}-unit us, ms, s or ns, or end the column's name with _us, _ms, _s or _ns, or with the unit in brackets."));
    }

    private IEnumerable<(string Key, int Index)> FactorColumns()
    {
        foreach (var factor in KnownFactors)
        {
            if (Column(null, "", factor) is >= 0 and var index)
            {
                yield return (factor, index);
            }
        }

        foreach (var named in options.FactorColumns)
        {
            var key = named.Trim().ToLowerInvariant();
            if (key is "id" or "nominal_report_hz")
            {
                throw new ImportException($"A factor cannot be called {key}: the study file uses the word for something else.", place, "Rename the column.");
            }

            if (!KnownFactors.Contains(key))
            {
                yield return (key, Column(named.Trim(), "--factor"));
            }
        }
    }

    /// <summary>The column that the user named, or else the one with a usual name; -1 if there is none.</summary>
    private int Column(string? named, string option, params string[] usual)
    {
        string[] names = named is null ? usual : [named];
        var found = -1;
        for (var index = 0; index < header.Length; index++)
        {
            if (!names.Contains(header[index], StringComparer.OrdinalIgnoreCase)
                && (named is not null || !names.Contains(TimeUnits.UsualName(header[index]), StringComparer.OrdinalIgnoreCase)))
            {
                continue;
            }

            if (found >= 0)
            {
                throw new ImportException(
                    $"The columns '{header[found]}' and '{header[index]}' (numbers {found + 1} and {index + 1}) could both be meant.",
                    place,
                    option.Length > 0 && !header[found].Equals(header[index], StringComparison.OrdinalIgnoreCase) ? $"Say which with {option} NAME." : "Rename or remove one of them.");
            }

            found = index;
        }

        if (found < 0 && named is not null)
        {
            throw Missing(named, $"'{named}'", $"{option} with a name that the file has");
        }

        if (found >= 0)
        {
            used[found] = true;
        }

        return found;
    }

    private ImportException Missing(string what, string sought, string remedy) => new(
        $"There is no column for {what}: looked for {sought}; the file has {string.Join(", ", header.Take(20).Select(name => Excerpt.Of(name)))}{(header.Length > 20 ? " and more" : "")}.",
        place,
        $"Give {remedy}{(header.Length == 1 ? ", or --delimiter if the cells were not told apart" : "")}.");
}
