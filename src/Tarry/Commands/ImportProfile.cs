using System.CommandLine;
using System.CommandLine.Parsing;
using Tarry.Output;
using Tarry.Studies.Sessions;

namespace Tarry.Commands;

/// <summary>Remembered options of <c>tarry import</c>: a text file in the study, one option a line, which a person can read, change and send on.</summary>
internal sealed class ImportProfile
{
    /// <summary>What belongs to one import and not to the form of its files.</summary>
    private static readonly string[] NotKept = ["--profile", "--save-profile", "--condition", "--sitting", "--procedure", "--correction", "--dry-run", "--explain", "--pictures"];

    private readonly Option<string?> use = new Option<string?>("--profile") { Description = "Take the options that were saved under this name; those given here come first." }.MustBeName();
    private readonly Option<string?> save = new Option<string?>("--save-profile") { Description = "Save the options given here under this name, in the study." }.MustBeName();

    /// <summary>The options, for the command and its help.</summary>
    public IReadOnlyList<Option> Options => [use, save];

    /// <summary>The command line with the options of its profile added, where it names one.</summary>
    public ParseResult Completed(ParseResult parsed, Command command, string study)
    {
        if (parsed.GetValue(use) is not { } name)
        {
            return parsed;
        }

        var file = FileOf(study, name);
        if (!File.Exists(file))
        {
            throw new UsageException($"The study has no import profile '{name}'.", $"Save one with --save-profile {name}, or give the options.");
        }

        var given = Given(parsed).Select(option => option.Option.Name).ToHashSet(StringComparer.Ordinal);
        var saved = File.ReadLines(file)
            .Select(line => line.Trim())
            .Where(line => line.Length > 0 && line[0] != '#')
            .Select(line => line.Split(' ', 2, StringSplitOptions.TrimEntries))
            .Where(parts => !given.Contains(parts[0]))
            .SelectMany(parts => parts);
        var completed = command.Parse([.. parsed.Tokens.Skip(1).Select(token => token.Value), .. saved]);
        return completed.Errors.Count == 0
            ? completed
            : throw new UsageException($"The import profile {file} cannot be used: {completed.Errors[0].Message}", "Correct the line, or save the profile anew.");
    }

    /// <summary>Saves the options, where the command line says so.</summary>
    public void Save(ParseResult parsed, string study)
    {
        if (parsed.GetValue(save) is not { } name)
        {
            return;
        }

        var file = FileOf(study, name);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllLines(file, Given(parsed)
            .Where(option => !NotKept.Contains(option.Option.Name))
            .SelectMany(option => option.Tokens.Count == 0 ? [option.Option.Name] : option.Tokens.Select(token => $"{option.Option.Name} {token.Value}")));
    }

    private static IEnumerable<OptionResult> Given(ParseResult parsed) =>
        parsed.CommandResult.Children.OfType<OptionResult>().Where(option => !option.Implicit);

    private static string FileOf(string study, string name) => Path.Combine(study, "import-profiles", $"{name}.txt");
}
