using Tarry.Rig;
using Tarry.Rig.HostEvents.Echo;
using Tarry.Rig.Proofs;
using Tarry.Rig.SimulatedBench;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Web.Desk;
using Tarry.Web.Sticks;

namespace Tarry.Web.Bench;

/// <summary>All runs and recordings of sticks of this program: one at a time for each rig and for each study, shown to every window, ended before the program ends.</summary>
/// <param name="desks">The studies.</param>
/// <param name="ports">Where rigs are.</param>
/// <param name="time">The clock.</param>
public sealed class LiveBench(StudyDesks desks, IBenchPorts ports, TimeProvider time) : IDisposable
{
    private static readonly TimeSpan StopLimit = TimeSpan.FromSeconds(20);
    private readonly Lock gate = new();
    private readonly Dictionary<string, BenchRun> runs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, StickRun> sticks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, BenchProof> proofs = new(StringComparer.Ordinal);

    /// <summary>Raised on any thread when a run, a recording or a proof begins or ends.</summary>
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

    /// <summary>The newest recording of a stick of a study; null where there was none since the program began, or it was put away.</summary>
    public StickRun? StickOf(string study)
    {
        lock (gate)
        {
            return sticks.GetValueOrDefault(study);
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
        var desk = DeskOf(card.Study);
        BenchRun run;
        lock (gate)
        {
            RequireFree(card.Asked.Port);
            RequireIdle(card.Study);
            run = Begin(card, desk.Open());
            runs.GetValueOrDefault(card.Study)?.Dispose();
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

    /// <summary>Begins a recording of a stick.</summary>
    /// <exception cref="StudyException">The study or the condition is not there, the session is there already, a recording of it broke off, or another program writes to the study.</exception>
    /// <exception cref="RigException">The port is not there or in use here.</exception>
    /// <exception cref="Rig.HostEvents.HostInputException">The device cannot be had.</exception>
    /// <exception cref="Imports.ImportException">The device has no stick.</exception>
    public StickRun Begin(StickCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        var desk = DeskOf(card.Study);
        StickRun run;
        lock (gate)
        {
            RequireFree(card.Source);
            RequireIdle(card.Study);
            run = Begin(card, desk.Open());
            sticks.GetValueOrDefault(card.Study)?.Dispose();
            sticks[card.Study] = run;
        }

        Changed?.Invoke();
        return run;
    }

    /// <summary>Puts a recording away that has ended, so that its page is free for the next.</summary>
    public void PutAway(StickRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        lock (gate)
        {
            if (!run.IsOn && sticks.GetValueOrDefault(run.Card.Study) == run)
            {
                sticks.Remove(run.Card.Study);
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

    /// <summary>Stops every run and waits for the trials in flight, and has every recording sealed: what the program does before it ends.</summary>
    public void StopAll()
    {
        BenchRun[] on;
        StickRun[] recordings;
        lock (gate)
        {
            on = [.. runs.Values.Where(run => run.IsOn)];
            recordings = [.. sticks.Values.Where(run => run.IsOn)];
            foreach (var proof in proofs.Values)
            {
                proof.Stop();
            }
        }

        foreach (var run in on)
        {
            run.Pause();
        }

        foreach (var recording in recordings)
        {
            recording.Stop();
        }

        Task.WaitAll([.. on.Select(run => run.Ended), .. recordings.Select(run => run.Ended)], StopLimit);
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

    private StickRun Begin(StickCard card, Study study)
    {
        var held = study.AcquireLock($"tarry serve, recording {card.Key}");
        var stop = new CancellationTokenSource();
        try
        {
            StickSessionRules.Require(study, card.Key);
            var run = new StickRun(card, study, time, stop);
            run.Start(held, IStickWork.Of(card, ports, time, stop.Token), OnEnd);
            return run;
        }
        catch
        {
            held.Dispose();
            stop.Dispose();
            throw;
        }
    }

    private StudyDesk DeskOf(string study) =>
        desks.Of(study) ?? throw new StudyException($"There is no study {study} on the shelf.", null, "It may have been moved or renamed; choose another.");

    private void RequireIdle(string study)
    {
        if (runs.GetValueOrDefault(study) is { IsOn: true } run)
        {
            throw new StudyException($"The run {run.Card.Key} of this study is still on.", null, "Stop it first, or wait for its end.");
        }

        if (sticks.GetValueOrDefault(study) is { IsOn: true } recording)
        {
            throw new StudyException($"The recording {recording.Card.Key} of this study is still on.", null, "Stop it first, or wait for its end.");
        }
    }

    private void RequireFree(string port)
    {
        if (port != SimulatedDefault.Port && (runs.Values.Any(run => run.IsOn && run.Card.Asked.Port == port) || sticks.Values.Any(run => run.IsOn && run.Card.Source == port) || (proofs.TryGetValue(port, out var proof) && proof.IsOn)))
        {
            throw new RigException($"What is at {port} is at work here already.", "Stop that run first, or choose another port.");
        }
    }

    private void OnEnd(BenchRun run) => OnEnd(run.Card.Study);

    private void OnEnd(StickRun run) => OnEnd(run.Card.Study);

    private void OnEnd(string study)
    {
        desks.Of(study)?.TellChanged();
        Changed?.Invoke();
    }
}
