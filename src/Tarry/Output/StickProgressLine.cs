using Tarry.Rig.Sticks;
using Tarry.Rig.Sticks.Recording;
using static System.FormattableString;

namespace Tarry.Output;

/// <summary>Says what to do with the stick: a line that stays for each step as it begins, and on a terminal a countdown below.</summary>
internal sealed class StickProgressLine(Terminal terminal) : IProgress<StickProgress>, IDisposable
{
    private readonly ProgressLine line = new(terminal);
    private StickPrompt? said;
    private (int, double, string?) shown;
    private bool isReady;

    public void Report(StickProgress value)
    {
        if (value.Number == 0 && !isReady)
        {
            isReady = true;
            line.Say(Invariant($"in {Math.Ceiling(value.SecondsLeft):0} s it begins. First: {value.Now.Text}"));
        }
        else if (value.Number > 0 && value.Now != said)
        {
            said = value.Now;
            line.Say(Invariant($"step {value.Number} of {value.Prompts.Count}, {value.Now.Seconds:0.#} s: {value.Now.Text}"));
        }

        // Once a second: readings come a hundred times as often.
        var now = (value.Number, Math.Ceiling(value.SecondsLeft), value.Repeat);
        if (terminal.ShowsProgress && now != shown)
        {
            shown = now;
            line.Show(Countdown(value));
        }
    }

    public void Dispose() => line.Dispose();

    private static string Countdown(StickProgress value)
    {
        var left = Invariant($"  {Math.Ceiling(value.SecondsLeft):0} s");
        return value.Number == 0 ? left : Invariant($"{left}{(value.Repeat is { } repeat ? $"   {repeat}" : "")}   {value.Readings} readings{(value.Next is { } next ? $"   then: {next.Asked}" : "")}");
    }
}
