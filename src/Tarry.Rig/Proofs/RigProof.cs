using Tarry.Rig.Link;
using Tarry.Rig.Runs;
using Tarry.Studies;
using Tarry.Studies.Calibrations;
using Tarry.Studies.Sessions;
using Tarry.Studies.StudyFiles;

namespace Tarry.Rig.Proofs;

/// <summary>Lets a rig that is wired to itself prove what it can be trusted with: what <c>tarry rig proof</c> and <c>calibrate</c> drive.</summary>
/// <remarks>
/// Captures round the loop by the same way as any session, into a scratch study that is removed afterwards; by light after a scan
/// for the thresholds that answer. All on the caller's thread.
/// </remarks>
/// <param name="source">Where the rig is.</param>
/// <param name="request">How it is wired.</param>
/// <param name="earlier">A calibration of the same wiring to agree with; null for none.</param>
/// <param name="progress">Told where the capture stands.</param>
public sealed class RigProof(IRigPortSource source, ProofRequest request, RigCalibration? earlier = null, IProgress<RunProgress>? progress = null)
{
    // The loop has no report slots to alias with, and short intervals make the proof short.
    private static readonly RunSettings Settings = new("edge", 5_000, 25_000, 2_000, 10_000, 2_000, 1);
    private static readonly SessionKey Key = new("proof", "loop");

    private RunRequest RunRequest => new()
    {
        Key = Key,
        Settings = Settings with { Response = request.Response },
        Trials = request.Trials,
        FallingEdge = request.FallingEdge,
        LightThreshold = request.LightThreshold,
        EarlyMinimumUs = 0,
        AllowNarrowInterval = true,
        ReturnLimit = TimeSpan.FromSeconds(30),
    };

    /// <summary>Looks at everything.</summary>
    /// <exception cref="RigException">There is no rig, or it failed on the way.</exception>
    /// <exception cref="RunSettingsException">The request cannot be done.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public ProofResult Run(CancellationToken cancellation = default)
    {
        if (request.Response == "echo")
        {
            throw new RunSettingsException("An echo goes through the host and proves nothing of the rig.", "Prove the rig with --response edge or light.");
        }

        RunParameters.Check(RunRequest);
        var thresholds = request.Response == "light" ? ScanThresholds(cancellation) : null;
        var (loop, run) = Capture(cancellation);
        var calibration = loop.Calibration(request, thresholds, source.Time.GetUtcNow());
        return new ProofResult(ProofJudgement.Of(request, loop, run, thresholds, calibration, earlier), calibration);
    }

    private ThresholdRange? ScanThresholds(CancellationToken cancellation)
    {
        using var connection = new RigConnection(source, _ => { });
        if (!connection.Open(cancellation))
        {
            throw new OperationCanceledException(cancellation);
        }

        return new ThresholdScan(connection.Link, source.Time, RunRequest).Find(cancellation);
    }

    private (LoopBack Loop, RunResult Run) Capture(CancellationToken cancellation)
    {
        var scratch = Directory.CreateTempSubdirectory("tarry-proof-");
        try
        {
            var study = Study.Create(scratch.FullName, "proof of the rig", null, 0.5, source.Time);
            using var held = study.AcquireLock("tarry rig proof");
            study.AddCondition(held, new ConditionEntry { Id = Key.Condition, Factors = new Dictionary<string, string>() });
            var run = new CaptureRun(study, held, RunRequest, source, progress).Run(cancellation);
            return run.Session is { } session ? (new LoopBack(session), run) : throw new OperationCanceledException(cancellation);
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }
}
