using static System.FormattableString;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>Where a recording stands.</summary>
/// <param name="Prompts">What is asked, in order.</param>
/// <param name="Seconds">Time since the first reading; below zero while there is time to take hold.</param>
/// <param name="Readings">Readings that came so far.</param>
/// <param name="X">The newest position, from -1 to 1 over the range.</param>
/// <param name="Y">The same of y, up being more.</param>
public sealed record StickProgress(IReadOnlyList<StickPrompt> Prompts, double Seconds, long Readings, double X, double Y)
{
    /// <summary>Which prompt is on, from 1; 0 while there is time to take hold.</summary>
    public int Number => Prompts.Count(prompt => prompt.Starts <= Seconds);

    /// <summary>What to do now; while there is time to take hold, what comes first.</summary>
    public StickPrompt Now => Prompts[Math.Max(Number - 1, 0)];

    /// <summary>What comes then; null at the last.</summary>
    public StickPrompt? Next => Number is > 0 and var number && number < Prompts.Count ? Prompts[number] : null;

    /// <summary>For how long still, in seconds.</summary>
    public double SecondsLeft => Number == 0 ? -Seconds : Math.Max(Now.Starts + Now.Seconds - Seconds, 0);

    /// <summary>Which of the repeats is on, such as <c>turn 2 of 5</c>; null where there are none.</summary>
    public string? Repeat => Number > 0 && Now.Each is { } each ? Invariant($"{each} {Now.RepeatAt(Seconds - Now.Starts)} of {Now.Repeats}") : null;

    /// <summary>How much of the time is over, from 0 to 1.</summary>
    public double Done => Math.Clamp(Seconds / (Prompts[^1].Starts + Prompts[^1].Seconds), 0, 1);
}
