using System.CommandLine;
using Tarry.Commands;
using Tarry.Output;

namespace Tarry;

/// <summary>All commands of the program.</summary>
internal static class CommandLine
{
    public static RootCommand Create(Terminal terminal) => new(
        "Measures how long an input tarries between a contact closing and its effect, how steadily it does so, and what that means.")
    {
        DemoCommand.Create(terminal),
        NewCommand.Create(terminal),
        ConditionCommand.Create(terminal),
        RunCommand.Create(terminal),
        ImportCommand.Create(terminal),
        CheckCommand.Create(terminal),
        AnalyseCommand.Create(terminal),
        ReportCommand.Create(terminal),
        ExportCommand.Create(terminal),
        RigCommand.Create(terminal),
    };
}
