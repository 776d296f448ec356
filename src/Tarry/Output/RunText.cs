using Tarry.Rig.Runs;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>How a run ended, in words.</summary>
internal static class RunText
{
    public static void Write(RunResult result, Terminal terminal)
    {
        var final = result.Final;
        terminal.Out.WriteLine(Invariant(
            $"{final.Key}: {final.CapturedOnDisk} trials on disk: {final.Responses} responses, {final.Missed} missed, {final.Early} early, {final.Refused} refused."));
        foreach (var text in result.Session?.Record.Events ?? [])
        {
            terminal.Out.WriteLine($"  {text}");
        }

        terminal.Out.WriteLine(result.Completed
            ? "Sealed."
            : "Stopped; nothing is lost. The same command goes on with it.");
    }
}
