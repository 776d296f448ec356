using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Tarry.Studies.Sessions;

namespace Tarry.Commands;

/// <summary>What the values of a command line must be, said before anything is opened or made.</summary>
internal static class ValueRules
{
    public static Option<T> MustBeName<T>(this Option<T> option)
    {
        option.Validators.Add(result => RequireName(result, option.Name));
        return option;
    }

    public static Argument<T> MustBeName<T>(this Argument<T> argument)
    {
        argument.Validators.Add(result => RequireName(result, argument.Name));
        return argument;
    }

    public static Option<T> MustNotBeEmpty<T>(this Option<T> option)
    {
        option.Validators.Add(result => RequireText(result, option.Name));
        return option;
    }

    public static Argument<T> MustNotBeEmpty<T>(this Argument<T> argument)
    {
        argument.Validators.Add(result => RequireText(result, argument.Name));
        return argument;
    }

    /// <summary>A number with a decimal point; the library's own reading takes the comma of 0,7 for a mark of thousands.</summary>
    public static Option<double> TakesNumber(this Option<double> option, bool positive = false)
    {
        option.CustomParser = result => Number(result, option.Name, positive);
        return option;
    }

    /// <inheritdoc cref="TakesNumber(Option{double}, bool)"/>
    public static Option<double?> TakesNumber(this Option<double?> option, bool positive = false)
    {
        option.CustomParser = result => Number(result, option.Name, positive);
        return option;
    }

    private static void RequireName(SymbolResult result, string name)
    {
        foreach (var token in result.Tokens.Where(token => !Names.IsName(token.Value)))
        {
            result.AddError($"'{token.Value}' is not a name for {name}; use 1 to 64 lower-case letters, digits, '-' or '_', beginning with a letter or digit, and no device name such as 'con'.");
        }
    }

    private static void RequireText(SymbolResult result, string name)
    {
        if (result.Tokens.Any(token => string.IsNullOrWhiteSpace(token.Value)))
        {
            result.AddError($"{name} is empty; give a text.");
        }
    }

    private static double Number(ArgumentResult result, string name, bool positive)
    {
        var text = result.Tokens[0].Value;
        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
        {
            result.AddError($"'{text}' is not a number for {name}; write it with a decimal point, such as 0.5.");
        }
        else if (positive && number <= 0)
        {
            result.AddError($"{name} cannot be {text}; give a number more than 0.");
        }

        return number;
    }
}
