using System.Runtime.CompilerServices;
using System.Threading.Channels;

namespace Tarry.Web.Target;

/// <summary>Presses that a program on this machine tells of, handed on to every light target that is open.</summary>
public sealed class PressFeed
{
    private const int MostWaiting = 64;
    private readonly Lock gate = new();
    private readonly List<Channel<string>> listeners = [];

    /// <summary>Tells every target.</summary>
    /// <param name="pressed">Whether the press begins; else it ends.</param>
    public void Tell(bool pressed)
    {
        lock (gate)
        {
            foreach (var listener in listeners)
            {
                listener.Writer.TryWrite(pressed ? "1" : "0");
            }
        }
    }

    /// <summary>What is told from now on: <c>1</c> as a press begins, <c>0</c> as it ends.</summary>
    public async IAsyncEnumerable<string> Listen([EnumeratorCancellation] CancellationToken cancellation)
    {
        // A window that does not keep up must not hold old presses: what it shows late is worse than nothing.
        var listener = Channel.CreateBounded<string>(new BoundedChannelOptions(MostWaiting) { FullMode = BoundedChannelFullMode.DropOldest });
        lock (gate)
        {
            listeners.Add(listener);
        }

        try
        {
            while (await WaitsFor(listener.Reader, cancellation))
            {
                while (listener.Reader.TryRead(out var told))
                {
                    yield return told;
                }
            }
        }
        finally
        {
            lock (gate)
            {
                listeners.Remove(listener);
            }
        }
    }

    private static async Task<bool> WaitsFor(ChannelReader<string> reader, CancellationToken cancellation)
    {
        try
        {
            return await reader.WaitToReadAsync(cancellation);
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }
}
