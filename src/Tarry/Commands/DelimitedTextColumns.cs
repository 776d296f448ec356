using System.CommandLine;
using System.CommandLine.Parsing;
using Tarry.Imports.DelimitedText;

namespace Tarry.Commands;

/// <summary>The options that say how a delimited text file is to be read.</summary>
internal sealed class DelimitedTextColumns
{
    private readonly Option<string?> condition = new("--condition") { Description = "The condition; of every row, where the file has no column for it." };
    private readonly Option<string?> sitting = new("--sitting") { Description = "The sitting; of every row, where the file has no column for it." };
    private readonly Option<string?> conditionColumn = new("--condition-column") { Description = "Column of the condition." };
    private readonly Option<string?> sittingColumn = new("--sitting-column") { Description = "Column of the sitting." };
    private readonly Option<string?> sequenceColumn = new("--seq-column") { Description = "Column of the trial's number." };
    private readonly Option<string?> pressTimeColumn = new("--press-time-column") { Description = "Column of the press time." };
    private readonly Option<string?> latencyColumn = new("--latency-column") { Description = "Column of the latency." };
    private readonly Option<string?> outcomeColumn = new("--outcome-column") { Description = "Column of the outcome." };
    private readonly Option<string[]> factorColumns = new("--factor") { Description = "A further column that holds a factor; may be given again." };
    private readonly Option<TimeUnit?> pressTimeUnit = Unit("--press-time-unit", "Unit of the press times: ns, us, ms or s.");
    private readonly Option<TimeUnit?> latencyUnit = Unit("--latency-unit", "Unit of the latencies: ns, us, ms or s.");
    private readonly Option<char?> delimiter = new("--delimiter") { Description = "Character between cells; 'tab' for a tab.", CustomParser = Delimiter };
    private readonly Option<bool> decimalComma = new("--decimal-comma") { Description = "Numbers are written 1,5." };

    private readonly Option<string?> header = new Option<string?>("--header") { Description = "Names of the columns between commas, where the file has no header." }.MustNotBeEmpty();
    private readonly Option<char?> comment = new("--comment") { Description = "Character with which a line begins that is left aside; '#' if not given.", CustomParser = Comment };

    /// <summary>What the session is, where the file does not say it.</summary>
    public IReadOnlyList<Option> Session => [condition, sitting];

    /// <summary>The options, for the command and its help.</summary>
    public OptionGroup Group => new("Long-form CSV", [conditionColumn, sittingColumn, sequenceColumn, pressTimeColumn, pressTimeUnit, latencyColumn, latencyUnit, outcomeColumn, factorColumns, delimiter, decimalComma, header, comment]);

    public string? Condition(ParseResult parsed) => parsed.GetValue(condition);

    public string? Sitting(ParseResult parsed) => parsed.GetValue(sitting);

    public DelimitedTextOptions Options(ParseResult parsed) => new()
    {
        Condition = parsed.GetValue(condition),
        Sitting = parsed.GetValue(sitting),
        ConditionColumn = parsed.GetValue(conditionColumn),
        SittingColumn = parsed.GetValue(sittingColumn),
        SequenceColumn = parsed.GetValue(sequenceColumn),
        PressTimeColumn = parsed.GetValue(pressTimeColumn),
        LatencyColumn = parsed.GetValue(latencyColumn),
        OutcomeColumn = parsed.GetValue(outcomeColumn),
        FactorColumns = parsed.GetValue(factorColumns) ?? [],
        PressTimeUnit = parsed.GetValue(pressTimeUnit),
        LatencyUnit = parsed.GetValue(latencyUnit),
        Delimiter = parsed.GetValue(delimiter),
        DecimalComma = parsed.GetValue(decimalComma),
        Header = parsed.GetValue(header)?.Split(','),
        CommentPrefix = parsed.GetValue(comment) ?? '#',
    };

    internal static Option<TimeUnit?> Unit(string name, string description) => new(name)
    {
        Description = description,
        CustomParser = argument =>
        {
            var unit = TimeUnits.FromSymbol(argument.Tokens[0].Value);
            if (unit is null)
            {
                argument.AddError($"'{argument.Tokens[0].Value}' is not a unit of time for {name}; give ns, us, ms or s.");
            }

            return unit;
        },
    };

    private static char? Comment(ArgumentResult argument)
    {
        var text = argument.Tokens[0].Value;
        if (text.Length == 1 && text[0] is > ' ' and not '"')
        {
            return text[0];
        }

        argument.AddError($"'{text}' cannot begin a comment for --comment; give one character.");
        return null;
    }

    private static char? Delimiter(ArgumentResult argument)
    {
        var text = argument.Tokens[0].Value;
        if (text is "tab" or "\\t")
        {
            return '\t';
        }

        if (text.Length == 1 && text[0] is not ('"' or '\r' or '\n'))
        {
            return text[0];
        }

        argument.AddError($"'{text}' cannot stand between cells; give one character, or 'tab'.");
        return null;
    }
}
