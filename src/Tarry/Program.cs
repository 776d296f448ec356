using System.CommandLine;
using Tarry;
using Tarry.Commands;
using Tarry.Output;

var terminal = Terminal.OfThisProcess();
var parsed = CommandLine.Create(terminal).Parse(args);
if (parsed.Errors.Count > 0)
{
    return WrongUse.Report(parsed, terminal);
}

try
{
    return await parsed.InvokeAsync(new InvocationConfiguration
    {
        Output = terminal.Out,
        Error = terminal.Error,
        EnableDefaultExceptionHandler = false,

        // Time to take the trial in flight and to flush.
        ProcessTerminationTimeout = TimeSpan.FromSeconds(10),
    });
}
catch (Exception exception) when (Failure.IsExpected(exception))
{
    return Failure.Report(exception, terminal);
}
