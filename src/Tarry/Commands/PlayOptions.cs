using System.CommandLine;
using System.Globalization;
using Tarry.Studies.StudyFiles;

namespace Tarry.Commands;

/// <summary>What is assumed of the game and the player, where the command line says otherwise than the study file.</summary>
internal sealed class PlayOptions
{
    private readonly Option<double[]?> windows = Numbers(
        "--window-ms",
        "Timing windows to either side of the right moment, such as 8.3,16.7. [default: what study.toml states, else one, two and four frames at 60 frames/s]",
        number => number is > 0 and <= 1000,
        "more than 0 and at most 1000");

    private readonly Option<double[]?> players = Numbers(
        "--player-sd-ms",
        "Standard deviations of the player's own timing: 0 for one who never errs. [default: what study.toml states, else 0,10]",
        number => number is 0 or (>= 0.1 and <= 1000),
        "0, or 0.1 to 1000");

    public void AddTo(Command command)
    {
        command.Add(windows);
        command.Add(players);
    }

    public PlayEntry Read(ParseResult parsed) => new(Given(parsed, windows), Given(parsed, players));

    // For a list that is not given the library has an empty one.
    private static double[]? Given(ParseResult parsed, Option<double[]?> option) =>
        parsed.GetValue(option) is { Length: > 0 } numbers ? numbers : null;

    private static Option<double[]?> Numbers(string name, string description, Func<double, bool> isAllowed, string range) => new(name)
    {
        Description = description,
        CustomParser = result =>
        {
            var texts = result.Tokens[0].Value.Split(',');
            var numbers = texts.Select(Number).ToArray();
            if (Array.FindIndex(numbers, number => number is null || !isAllowed(number.Value)) is >= 0 and var bad)
            {
                result.AddError(numbers[bad] is null
                    ? $"'{texts[bad]}' is not a number for {name}; write numbers with a decimal point and commas between them, such as 8.3,16.7."
                    : $"{name} cannot be {texts[bad]}; each must be {range} milliseconds.");
                return null;
            }

            return [.. numbers.OfType<double>()];
        },
    };

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;
}
