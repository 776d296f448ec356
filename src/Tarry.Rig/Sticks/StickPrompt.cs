using static System.FormattableString;

namespace Tarry.Rig.Sticks;

/// <summary>What is asked of the hand, from when on and for how long.</summary>
/// <param name="Asked">What to do.</param>
/// <param name="Starts">When it begins, in seconds since the first reading.</param>
/// <param name="Seconds">For how long.</param>
/// <param name="Repeats">How often it is done within that time, evenly.</param>
/// <param name="Each">What one of these is called; null for what is one thing.</param>
public sealed record StickPrompt(string Asked, double Starts, double Seconds, int Repeats, string? Each)
{
    /// <summary>What to do and how fast, in words.</summary>
    public string Text => Each is null ? Asked : Invariant($"{Asked}, one {Each} in {Seconds / Repeats:0.#} s");

    /// <summary>Which of its repeats is on, from 1, after so many seconds of it.</summary>
    public int RepeatAt(double seconds) => Math.Clamp(1 + (int)(seconds / (Seconds / Repeats)), 1, Repeats);
}
