using System.Globalization;
using Tarry.Studies.StudyFiles;

namespace Tarry.Imports.DelimitedText;

/// <summary>A condition as the study file or the rows so far describe it. What is stated first holds; a row that says otherwise is refused.</summary>
internal sealed class ImportedCondition
{
    private readonly Dictionary<string, string> factors = new(StringComparer.Ordinal);
    private readonly string id;
    private readonly string text;
    private ConditionEntry? declared;
    private double? nominalReportHz;

    public ImportedCondition(string id, string text, ConditionEntry? existing)
    {
        (this.id, this.text, declared) = (id, text, existing);
        foreach (var (key, level) in existing?.Factors ?? new Dictionary<string, string>())
        {
            factors[key] = level;
        }

        nominalReportHz = existing?.NominalReportHz;
    }

    /// <summary>Its name.</summary>
    public string Id => id;

    /// <summary>Whether neither the study nor a file before declares it.</summary>
    public bool IsNew => declared is null;

    /// <summary>Factors that the rows state and the entry that declares it lacks; an entry is never changed by an import.</summary>
    public IEnumerable<string> Unstated => declared is null ? [] : factors.Keys.Where(key => !declared.Factors.ContainsKey(key));

    /// <summary>The entry for the study file. The text that the name was made of is kept as the device, where nothing else names one.</summary>
    public ConditionEntry Declare()
    {
        if (id != text)
        {
            factors.TryAdd("device", text);
        }

        return declared = new ConditionEntry { Id = id, Factors = new Dictionary<string, string>(factors), NominalReportHz = nominalReportHz };
    }

    /// <summary>Takes the factor levels of a row, all or, when it is refused, none.</summary>
    public RowRefusal? Take(RowReader row, ColumnMap columns, bool decimalComma)
    {
        foreach (var (key, index) in columns.Factors)
        {
            var level = FactorText.Clean(row[index]);
            if (level.IsEmpty || (factors.TryGetValue(key, out var stated) && level.SequenceEqual(stated)))
            {
                continue;
            }

            if (stated is not null)
            {
                return new RowRefusal(RowProblem.FactorConflict, $"{key} of {id} is {Excerpt.Of(level)} here and {Excerpt.Of(stated)} before; a condition has one level of each factor");
            }

            if (level.ContainsAny('\0', '\uFFFD'))
            {
                return new RowRefusal(RowProblem.FactorConflict, $"{key} is {Excerpt.Of(level)}, which is not UTF-8 text");
            }
        }

        if (TakeReportRate(row, columns, decimalComma) is { } refusal)
        {
            return refusal;
        }

        foreach (var (key, index) in columns.Factors)
        {
            var level = FactorText.Clean(row[index]);
            if (!level.IsEmpty && !factors.ContainsKey(key))
            {
                factors[key] = level.ToString();
            }
        }

        return null;
    }

    private RowRefusal? TakeReportRate(RowReader row, ColumnMap columns, bool decimalComma)
    {
        if (columns.NominalReportHz < 0)
        {
            return null;
        }

        var cell = row[columns.NominalReportHz];
        switch (CellNumbers.ReadDecimal(cell, decimalComma, out var hertz))
        {
            case CellNumbers.Reading.Empty:
                return null;
            case CellNumbers.Reading.Read when hertz > 0:
                break;
            case CellNumbers.Reading.NotANumber:
                return new RowRefusal(RowProblem.NotANumber, $"nominal_report_hz {Excerpt.Of(cell)} is not a number");
            default:
                return new RowRefusal(RowProblem.OutOfRange, $"nominal_report_hz {Excerpt.Of(cell)} is not more than zero");
        }

        var stated = nominalReportHz ??= declared is null ? (double)hertz : null;
        return stated is null || stated == (double)hertz
            ? null
            : new RowRefusal(RowProblem.FactorConflict, string.Create(CultureInfo.InvariantCulture, $"nominal_report_hz of {id} is {hertz} here and {stated} before"));
    }
}
