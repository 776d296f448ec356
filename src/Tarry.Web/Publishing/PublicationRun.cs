namespace Tarry.Web.Publishing;

/// <summary>A publication under way, or the last one.</summary>
public sealed class PublicationRun : IDisposable
{
    private readonly CancellationTokenSource stop = new();

    /// <summary>How far it has come.</summary>
    public PublicationProgress Progress { get; internal set; }

    /// <summary>Whether it is under way.</summary>
    public bool IsRunning { get; internal set; } = true;

    /// <summary>Whether it was stopped.</summary>
    public bool WasStopped { get; internal set; }

    /// <summary>Why it failed; null where it did not.</summary>
    public Exception? Problem { get; internal set; }

    internal CancellationToken Stopping => stop.Token;

    /// <summary>Stops it; what is written is whole and stays.</summary>
    public void Stop() => stop.Cancel();

    /// <inheritdoc/>
    public void Dispose() => stop.Dispose();
}
