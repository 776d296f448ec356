using System.CommandLine;
using Tarry.Commands;
using Tarry.Output;

namespace Tarry;

/// <summary>The program: all commands, and what becomes of their errors.</summary>
internal static class CommandLine
{
    // Time to take the trial in flight and to flush, once Ctrl-C was pressed.
    private static readonly TimeSpan TimeToStop = TimeSpan.FromSeconds(10);

    public static async Task<int> RunAsync(string[] arguments, Terminal terminal)
    {
        try
        {
            var parsed = Create(terminal).Parse(arguments);
            if (parsed.Errors.Count > 0)
            {
                return WrongUse.Report(parsed, terminal);
            }

            return await parsed.InvokeAsync(new InvocationConfiguration
            {
                Output = terminal.Out,
                Error = terminal.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = TimeToStop,
            });
        }
        catch (Exception exception) when (Failure.IsExpected(exception))
        {
            return Failure.Report(exception, terminal);
        }
#pragma warning disable CA1031 // The last resort: a user never sees a stack trace.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            return Failure.ReportOwn(exception, terminal);
        }
    }

    private static RootCommand Create(Terminal terminal) => new(
        "Measures how long an input tarries between a contact closing and its effect, how steadily it does so, and what that means.")
    {
        DemoCommand.Create(terminal),
        NewCommand.Create(terminal),
        ConditionCommand.Create(terminal),
        PlanCommand.Create(terminal),
        RunCommand.Create(terminal),
        ImportCommand.Create(terminal),
        CheckCommand.Create(terminal),
        AnalyseCommand.Create(terminal),
        CompareCommand.Create(terminal),
        ReportCommand.Create(terminal),
        ExportCommand.Create(terminal),
        RigCommand.Create(terminal),
        HostCommand.Create(terminal),
        StickCommand.Create(terminal),
        ServeCommand.Create(terminal),
        CompletionsCommand.Create(terminal),
    };
}
