using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.Recordings;
using Tarry.Imports.Sticks;
using Tarry.Output;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Commands;

/// <summary>The options that say what was done with a stick, and how its positions are written.</summary>
internal sealed class StickOptions
{
    private readonly Option<string?> procedure = new("--procedure") { Description = "What is done with the stick; 'tarry stick procedures' explains them." };
    private readonly Option<StickRange?> xRange = Range("--x-range", "Least and greatest count that the stick's x can say, as 0..255; a table needs it.");
    private readonly Option<StickRange?> yRange = Range("--y-range", "The same of y; that of x if not given.");
    private readonly Option<double?> step = new Option<double?>("--step") { Description = "The step between neighbouring counts; 1 if not given and all are whole." }.TakesNumber(positive: true);
    private readonly Option<string?> direction = new("--y-direction") { Description = "Which way the stick's y grows in the file; up for a table, down for reports if not given." };
    private readonly Option<string?> xColumn = new("--x-column") { Description = "The column of x." };
    private readonly Option<string?> yColumn = new("--y-column") { Description = "The column of y." };
    private readonly Option<TimeUnit?> timeUnit = DelimitedTextColumns.Unit("--time-unit", "Unit of the times: ns, us, ms or s.");
    private readonly Option<string?> angle = new("--stimulus-column") { Description = "The column of the angle of the stop in degrees; stimulus_deg if not given." };
    private readonly Option<string?> levelX = new("--stimulus-x-column") { Description = "The column of the level that stands for the wiper of x; stimulus_x if not given." };
    private readonly Option<string?> levelY = new("--stimulus-y-column") { Description = "The same of y; stimulus_y if not given." };
    private readonly Option<double> supply = new Option<double>("--supply") { Description = "What the whole supply is in the unit of the levels, such as 3.3 where they are volts.", DefaultValueFactory = _ => 1 }.TakesNumber(positive: true);
    private readonly Option<double?> uncertainty = new Option<double?>("--stimulus-uncertainty") { Description = "Standard uncertainty of the stimulus: degrees, or a share of the supply." }.TakesNumber();
    private readonly Option<string?> xField = new("--x-field") { Description = "The field of a report that is the stick's x; the one with the usage X if not given." };
    private readonly Option<string?> yField = new("--y-field") { Description = "The field of a report that is the stick's y; the one with the usage Y if not given." };

    public StickOptions()
    {
        procedure.AcceptOnlyFromAmong([.. StickProcedures.Names]);
        direction.AcceptOnlyFromAmong("up", "down");
    }

    /// <summary>The options of tables and of reports, for the command and its help.</summary>
    public OptionGroup Group => new("Positions of a stick (--kind stick)", [.. OfReports, xColumn, yColumn, timeUnit, step, angle, levelX, levelY, supply, uncertainty]);

    private Option[] OfReports => [procedure, xRange, yRange, direction, xField, yField];

    /// <summary>Adds what reports need.</summary>
    public void AddReportOptionsTo(Command command)
    {
        foreach (var option in OfReports)
        {
            command.Add(option);
        }
    }

    /// <summary>What was done; null where it is not said.</summary>
    public StickProcedure? Procedure(ParseResult parsed) => parsed.GetValue(procedure) is { } name ? StickProcedures.Find(name) : null;

    /// <summary>The session that the positions become.</summary>
    public RecordingTarget Target(ParseResult parsed, string? condition, string? sitting, IReadOnlyList<ConditionEntry> conditions)
    {
        if (condition is null || sitting is null || Procedure(parsed) is not { } done)
        {
            throw new UsageException("The positions of a stick do not say what was recorded.", "Give --condition ID, --sitting ID and --procedure NAME; 'tarry stick procedures' lists these.");
        }

        foreach (var name in new[] { condition, sitting }.Where(name => !Names.IsName(name)))
        {
            throw new UsageException($"'{name}' is not a name.", "Use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit.");
        }

        return new RecordingTarget(new SessionKey(sitting, condition, done), conditions);
    }

    /// <summary>How the positions of a file are read.</summary>
    public StickReading Reading(ParseResult parsed, string? timeColumn, DelimitedTextOptions text, bool isTable)
    {
        var session = Target(parsed, text.Condition, text.Sitting, []).Session;
        return new StickReading(session.Procedure!.Value, isTable ? Table(parsed, timeColumn, text) : null, Reports(parsed));
    }

    public StickTableOptions Table(ParseResult parsed, string? timeColumn, DelimitedTextOptions text)
    {
        var x = parsed.GetValue(xRange) ?? throw new UsageException(
            "The range of the axes is not known: a table does not say it.", "Give --x-range MIN..MAX, the least and greatest count that the device can say, such as 0..255.");
        var stated = parsed.GetValue(step);
        return new StickTableOptions
        {
            X = x with { Step = stated },
            Y = (parsed.GetValue(yRange) ?? x) with { Step = stated },
            Vertical = parsed.GetValue(direction) == "down" ? VerticalDirection.Down : VerticalDirection.Up,
            TimeColumn = timeColumn,
            TimeUnit = parsed.GetValue(timeUnit),
            XColumn = parsed.GetValue(xColumn),
            YColumn = parsed.GetValue(yColumn),
            AngleColumn = parsed.GetValue(angle),
            LevelXColumn = parsed.GetValue(levelX),
            LevelYColumn = parsed.GetValue(levelY),
            Supply = parsed.GetValue(supply),
            StimulusUncertainty = parsed.GetValue(uncertainty),
            Text = text,
        };
    }

    public StickReportOptions Reports(ParseResult parsed) => new()
    {
        XField = parsed.GetValue(xField),
        YField = parsed.GetValue(yField),
        X = parsed.GetValue(xRange),
        Y = parsed.GetValue(yRange) ?? parsed.GetValue(xRange),
        Vertical = parsed.GetValue(direction) == "up" ? VerticalDirection.Up : VerticalDirection.Down,
    };

    private static Option<StickRange?> Range(string name, string description) => new(name)
    {
        Description = description,
        CustomParser = argument =>
        {
            var ends = argument.Tokens[0].Value.Split("..");
            if (ends.Length == 2 && Number(ends[0], out var low) && Number(ends[1], out var high) && low < high)
            {
                return new StickRange(low, high, null);
            }

            argument.AddError($"'{argument.Tokens[0].Value}' is no range for {name}; give the least and the greatest count, as 0..255.");
            return null;
        },
    };

    private static bool Number(string text, out double number) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);
}
