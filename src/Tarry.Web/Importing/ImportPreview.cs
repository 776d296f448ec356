using Tarry.Imports;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Importing;

/// <summary>What an import would add to a study, read and shown before anything is written.</summary>
/// <param name="Plans">One plan a file.</param>
/// <param name="Taken">Sessions that the study has already: with any of them nothing can be kept.</param>
public sealed record ImportPreview(IReadOnlyList<ImportPlan> Plans, IReadOnlyList<SessionKey> Taken)
{
    /// <summary>Reads the files for a study as it is on the disk.</summary>
    /// <param name="request">The files and how to read them.</param>
    /// <param name="study">The study.</param>
    /// <param name="progress">Told how far it has come.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="ImportException">Nothing of them could be kept.</exception>
    public static ImportPreview Of(ImportRequest request, Study study, IProgress<ImportProgress> progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(study);
        var plans = ImportReading.Read(request, study, progress, cancellation);
        var there = study.Outline.Select(session => session.Key).ToHashSet();
        return new ImportPreview(plans, [.. plans.SelectMany(plan => plan.Keys).Where(there.Contains)]);
    }

    /// <summary>Whether it can be kept.</summary>
    public bool CanBeKept => Taken.Count == 0;
}
