using Tarry.Findings;
using Tarry.Findings.Play;
using Tarry.Studies;
using Tarry.Studies.StudyFiles;
using Tarry.Web.Shelf;

namespace Tarry.Web.Desk;

/// <summary>An open study: its findings, made once for each state of its data and shared by every window that shows them.</summary>
public sealed class StudyDesk
{
    private const ulong Seed = 1;
    private readonly Lock gate = new();
    private readonly string version;
    private StudyStamp stamp;
    private Task<FindingsDocument>? findings;

    /// <summary>A desk on which nothing is computed yet.</summary>
    /// <param name="name">The study's name on the shelf.</param>
    /// <param name="folder">Its folder.</param>
    /// <param name="version">The version of the program, for the findings.</param>
    public StudyDesk(string name, string folder, string version)
    {
        (Name, Folder) = (name, folder);
        this.version = version;
    }

    /// <summary>The study's name on the shelf, as it stands in addresses.</summary>
    public string Name { get; }

    /// <summary>Its folder.</summary>
    public string Folder { get; }

    /// <summary>Raised, on any thread, after this program has changed the study.</summary>
    public event Action? Changed;

    /// <summary>The study as it is on the disk now.</summary>
    /// <exception cref="StudyException">It cannot be read.</exception>
    public Study Open() => Study.Open(Folder);

    /// <summary>The findings of the study as it is on the disk now; computed on another thread, once for all who ask.</summary>
    public Task<FindingsDocument> Findings()
    {
        lock (gate)
        {
            var now = StudyStamp.Of(Folder);
            if (findings is null || findings.IsFaulted || now != stamp)
            {
                stamp = now;
                findings = Task.Run(() => StudyAnalysis.Run(Open(), Seed, version));
            }

            return findings;
        }
    }

    /// <summary>What the study would say with a further exclusion; computed on another thread, nothing is written.</summary>
    /// <param name="exclusion">What would be set aside.</param>
    /// <param name="cancellation">Stops it.</param>
    public Task<Foreseen> Try(Exclusion exclusion, CancellationToken cancellation) => Task.Run(
        () =>
        {
            var from = StudyStamp.Of(Folder);
            return new Foreseen(from, StudyAnalysis.Run(Open(), [exclusion], Seed, version, cancellation));
        },
        cancellation);

    /// <summary>What the study means for other windows and players; computed on another thread.</summary>
    /// <param name="document">The findings of the study as it is.</param>
    /// <param name="play">The windows and players.</param>
    /// <param name="cancellation">Stops it.</param>
    public Task<StudyPlay?> Play(FindingsDocument document, PlayEntry play, CancellationToken cancellation) =>
        Task.Run(() => StudyAnalysis.Play(Open(), document, play, cancellation), cancellation);

    /// <summary>Changes the study under its lock and tells every window.</summary>
    /// <param name="change">The change.</param>
    /// <param name="foreseen">What the study says once it is made, where that is known; it counts only if nobody has changed the study since.</param>
    /// <exception cref="StudyException">It cannot be done; the study is as before.</exception>
    public void Edit(Action<Study, StudyLock> change, Foreseen? foreseen = null)
    {
        ArgumentNullException.ThrowIfNull(change);
        var study = Open();
        using (var held = study.AcquireLock("tarry serve"))
        {
            var isAsTried = foreseen is not null && StudyStamp.Of(Folder) == foreseen.From;
            change(study, held);
            if (isAsTried)
            {
                lock (gate)
                {
                    (stamp, findings) = (StudyStamp.Of(Folder), Task.FromResult(foreseen!.Findings));
                }
            }
        }

        Changed?.Invoke();
    }

    /// <summary>Tells every window that the study has changed, such as by a run that was sealed.</summary>
    public void TellChanged() => Changed?.Invoke();
}
