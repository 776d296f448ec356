namespace Tarry.Output;

/// <summary>
/// One line on the error stream that tells how far long work is; where the stream goes to a file, a line now and then.
/// </summary>
internal sealed class ProgressLine(Terminal terminal) : IDisposable
{
    private static readonly TimeSpan BetweenLines = TimeSpan.FromSeconds(5);
    private readonly TimeProvider time = TimeProvider.System;
    private long? lastLine;
    private int shown;

    public void Show(string text)
    {
        if (terminal.ShowsProgress)
        {
            terminal.Error.Write("\r" + text.PadRight(shown));
            shown = text.Length;
        }
        else if (lastLine is not { } last || time.GetElapsedTime(last) > BetweenLines)
        {
            terminal.Error.WriteLine(text);
            lastLine = time.GetTimestamp();
        }
    }

    /// <summary>A line that stays, above the one that tells how far.</summary>
    public void Say(string text)
    {
        Clear();
        terminal.Error.WriteLine(text);
    }

    public void Clear()
    {
        if (shown > 0)
        {
            terminal.Error.Write("\r" + new string(' ', shown) + "\r");
            shown = 0;
        }
    }

    public void Dispose() => Clear();
}
