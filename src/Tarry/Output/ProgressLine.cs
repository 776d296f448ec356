namespace Tarry.Output;

/// <summary>One line on the error stream that tells how far long work is; nothing where nobody watches.</summary>
internal sealed class ProgressLine(Terminal terminal) : IDisposable
{
    private int shown;

    public void Show(string text)
    {
        if (!terminal.ShowsProgress)
        {
            return;
        }

        terminal.Error.Write("\r" + text.PadRight(shown));
        shown = text.Length;
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
