using System.CommandLine;
using Tarry.Output;
using Tarry.Studies;
using Tarry.Studies.StudyFiles;

namespace Tarry.Commands;

/// <summary><c>tarry condition</c>: adds a condition to the study file, or changes it.</summary>
internal static class ConditionCommand
{
    private static readonly (string Option, string Factor, string Description)[] Factors =
    [
        ("--device", "device", "Maker and model."),
        ("--unit", "unit", "Which specimen."),
        ("--device-firmware", "device_firmware", "The device's firmware."),
        ("--link", "link", "usb, dongle, radio, ..."),
        ("--layer", "layer", "Software layer between host and application; none."),
        ("--control", "control", "button, trigger or stick axis."),
        ("--placement", "placement", "How far and where."),
    ];

    public static Command Create(Terminal terminal)
    {
        var study = StudyArgument.Create();
        var id = new Argument<string>("ID") { Description = "Its name in this study: lower-case letters, digits, '-' and '_'." }.MustBeName();
        var rate = new Option<double?>("--nominal-report-hz") { Description = "Reports a second that the maker states." }.TakesNumber(positive: true);
        var options = Factors.Select(factor => (factor.Factor, Option: new Option<string?>(factor.Option) { Description = factor.Description })).ToList();
        var command = new Command("condition", "Declares what is tested: a condition and the levels of its factors.\n\nExample: tarry condition pads quill-usb --device \"Quill 2\" --unit 0041 --link usb --nominal-report-hz 500")
        {
            study, id, rate,
        };
        options.ForEach(option => command.Add(option.Option));
        command.SetAction(parsed =>
        {
            var opened = Study.Open(parsed.GetRequiredValue(study));
            using var held = opened.AcquireLock("tarry condition");
            var name = parsed.GetRequiredValue(id);
            opened.AddCondition(held, new ConditionEntry
            {
                Id = name,
                Factors = options
                    .Select(option => (option.Factor, Level: parsed.GetValue(option.Option)))
                    .Where(factor => factor.Level is not null)
                    .ToDictionary(factor => factor.Factor, factor => factor.Level!),
                NominalReportHz = parsed.GetValue(rate),
            });
            terminal.Out.WriteLine($"Condition {name} is in {Path.Combine(opened.Folder, "study.toml")}.");
            return ExitCode.Done;
        });
        return command;
    }
}
