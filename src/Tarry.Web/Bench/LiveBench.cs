using Tarry.Rig;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Proofs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Web.Desk;

namespace Tarry.Web.Bench;

/// <summary>All runs of this program: one at a time for each rig and for each study, shown to every window, ended before the program ends.</summary>
/// <param name="desks">The studies.</param>
/// <param name="ports">Where rigs are.</param>
/// <param name="time">The clock.</param>
public sealed class LiveBench(StudyDesks desks, IBenchPorts ports, TimeProvider time) : IDisposable
{
    private static readonly TimeSpan StopLimit = TimeSpan.FromSeconds(20);
    private readonly Lock gate = new();
    private readonly Dictionary<string, BenchRun> runs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, BenchProof> proofs = new(StringComparer.Ordinal);

    /// <summary>Raised on any thread when a run or a proof begins or ends.</summary>
    public event Action? Changed;

    /// <summary>The newest run of each study, in order of their names.</summary>
    public IReadOnlyList<BenchRun> Runs
    {
        get
        {
            lock (gate)
            {
                return [.. runs.OrderBy(entry => entry.Key, StringComparer.Ordinal).Select(entry => entry.Value)];
            }
        }
    }

    /// <summary>The newest run of a study; null where there was none since the program began, or it was put away.</summary>
    public BenchRun? Of(string study)
    {
        lock (gate)
        {
            return runs.GetValueOrDefault(study);
        }
    }

    /// <summary>The newest proof of the rig at a port; null where there was none.</summary>
    public BenchProof? ProofAt(string port)
    {
        lock (gate)
        {
            return proofs.GetValueOrDefault(port);
        }
    }

    /// <summary>Begins a run, or goes on with its session where that is open.</summary>
    /// <exception cref="Rig.Runs.RunSettingsException">What is asked for cannot be.</exception>
    /// <exception cref="StudyException">The study is not there, another program writes to it, or the disk failed.</exception>
    /// <exception cref="RigException">The port is not there or in use here.</exception>
    /// <exception cref="Rig.HostEvents.HostInputException">The input device to be echoed cannot be had.</exception>
    public BenchRun Begin(RunCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        var desk = desks.Of(card.Study) ?? throw new StudyException($"There is no study {card.Study} on the shelf.", null, "It may have been moved or renamed; choose another.");
        BenchRun run;
        lock (gate)
        {
            RequireFree(card.Asked.Port);
            if (runs.TryGetValue(card.Study, out var before) && before.IsOn)
            {
                throw new StudyException($"The run {before.Card.Key} of this study is still on.", null, "Stop it first, or wait for its end.");
            }

            run = Begin(card, desk.Open());
            before?.Dispose();
            runs[card.Study] = run;
        }

        Changed?.Invoke();
        return run;
    }

    /// <summary>Seals an open session as it is: nothing can be added to it later.</summary>
    /// <exception cref="StudyException">The session is not open, another program writes to the study, or the disk failed; the journal is kept.</exception>
    public void Seal(string study, SessionKey key)
    {
        desks.Of(study)?.Edit((opened, held) =>
        {
            using var recorder = opened.Resume(held, key);
            recorder.Seal();
            opened.ForgetOpenRun(held, key);
        });
        if (Of(study) is { } before && before.Card.Key == key)
        {
            PutAway(before);
        }

        Changed?.Invoke();
    }

    /// <summary>Puts a run away that has ended, so that the bench is free for the next.</summary>
    public void PutAway(BenchRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        lock (gate)
        {
            if (!run.IsOn && runs.GetValueOrDefault(run.Card.Study) == run)
            {
                runs.Remove(run.Card.Study);
                run.Dispose();
            }
        }

        Changed?.Invoke();
    }

    /// <summary>Has a rig that is wired to itself prove itself.</summary>
    /// <exception cref="RigException">The port is not there or in use here.</exception>
    public BenchProof Prove(string port, ProofRequest request)
    {
        BenchProof proof;
        lock (gate)
        {
            RequireFree(port);
            if (proofs.GetValueOrDefault(port) is { IsOn: true } under)
            {
                return under;
            }

            proof = new BenchProof(port, request);
            proof.Start(ports.Loop(port), () => Changed?.Invoke());
            proofs.GetValueOrDefault(port)?.Dispose();
            proofs[port] = proof;
        }

        Changed?.Invoke();
        return proof;
    }

    /// <summary>Stops every run and waits for the trials in flight: what the program does before it ends.</summary>
    public void StopAll()
    {
        BenchRun[] on;
        lock (gate)
        {
            on = [.. runs.Values.Where(run => run.IsOn)];
            foreach (var proof in proofs.Values)
            {
                proof.Stop();
            }
        }

        foreach (var run in on)
        {
            run.Pause();
        }

        Task.WaitAll([.. on.Select(run => run.Ended)], StopLimit);
    }

    /// <inheritdoc/>
    public void Dispose() => StopAll();

    private BenchRun Begin(RunCard card, Study study)
    {
        var held = study.AcquireLock($"tarry serve, run {card.Key}");
        HostEcho? echo = null;
        var stop = new CancellationTokenSource();
        try
        {
            var rate = study.File.Conditions.FirstOrDefault(condition => condition.Id == card.Key.Condition)?.NominalReportHz;
            var before = study.SessionKeys.Contains(card.Key) && !study.IsSealed(card.Key) ? study.Read(card.Key).Trials.Count : 0;
            (var source, echo) = ports.Of(card.Asked, rate, before, stop.Token);
            var run = new BenchRun(card, study, time, stop);
            run.Start(held, source, echo, OnEnd);
            return run;
        }
        catch
        {
            echo?.Dispose();
            held.Dispose();
            stop.Dispose();
            throw;
        }
    }

    private void RequireFree(string port)
    {
        if (port != SimulatedDefault.Port && (runs.Values.Any(run => run.IsOn && run.Card.Asked.Port == port) || (proofs.TryGetValue(port, out var proof) && proof.IsOn)))
        {
            throw new RigException($"The rig at {port} is at work here already.", "Stop that run first, or choose another port.");
        }
    }

    private void OnEnd(BenchRun run)
    {
        desks.Of(run.Card.Study)?.TellChanged();
        Changed?.Invoke();
    }
}
