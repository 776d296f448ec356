using Tarry.Rig.Link;
using Tarry.Rig.Proofs;
using Tarry.Rig.Runs;

namespace Tarry.Web.Bench;

/// <summary>A rig proving itself, on a thread of its own.</summary>
/// <param name="port">Where the rig is.</param>
/// <param name="request">How it is wired to itself.</param>
public sealed class BenchProof(string port, ProofRequest request) : IProgress<RunProgress>, IDisposable
{
    private readonly CancellationTokenSource stop = new();
    private volatile bool ended;

    /// <summary>Where the rig is.</summary>
    public string Port { get; } = port;

    /// <summary>How it is wired to itself.</summary>
    public ProofRequest Request { get; } = request;

    /// <summary>Whether it is still at it.</summary>
    public bool IsOn => !ended;

    /// <summary>Presses round the loop so far.</summary>
    public long Trials { get; private set; }

    /// <summary>What the rig proved; null while it is at it, and where it could not be had.</summary>
    public ProofResult? Result { get; private set; }

    /// <summary>Why there is no result; null where there is, or may be.</summary>
    public Exception? Problem { get; private set; }

    /// <summary>The calibration's name in the study that it was stored in; null where it was not.</summary>
    public string? Stored { get; set; }

    /// <summary>Gives up.</summary>
    public void Stop() => stop.Cancel();

    /// <inheritdoc/>
    public void Report(RunProgress value)
    {
        ArgumentNullException.ThrowIfNull(value);
        Trials = value.CapturedOnDisk;
    }

    /// <inheritdoc/>
    public void Dispose() => stop.Dispose();

    internal void Start(IRigPortSource source, Action onEnd) => new Thread(() =>
    {
        try
        {
            Result = new RigProof(source, Request, progress: this).Run(stop.Token);
        }
        catch (OperationCanceledException)
        {
            // It was stopped; there is nothing to say.
        }
#pragma warning disable CA1031 // Whatever ended it is shown to its user; the program has runs and windows.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            Problem = exception;
        }

        ended = true;
        onEnd();
    })
    {
        Name = $"proof {Port}",
        IsBackground = true,
    }.Start();
}
