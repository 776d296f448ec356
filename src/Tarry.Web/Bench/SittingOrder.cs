using Tarry.Imports;
using Tarry.Imports.Orders;
using Tarry.Studies;
using Tarry.Studies.Sessions;

namespace Tarry.Web.Bench;

/// <summary>The steps of one sitting as the study's order has them, and which of them are done.</summary>
/// <param name="Sitting">The sitting.</param>
/// <param name="Steps">Its steps, in order.</param>
/// <param name="Sittings">All sittings of the order.</param>
/// <param name="Problem">Why there is no order to follow; null where there is one, or the study has none.</param>
public sealed record SittingOrder(string Sitting, IReadOnlyList<SittingStep> Steps, IReadOnlyList<string> Sittings, ImportException? Problem)
{
    /// <summary>The first step that is not done; null where all are, or there is none.</summary>
    public SittingStep? Next => Steps.FirstOrDefault(step => step.State != SittingStepState.Done);

    /// <summary>How many are done.</summary>
    public int DoneSteps => Steps.Count(step => step.State == SittingStepState.Done);

    /// <summary>The order of a sitting; of the first that has steps left where none is named.</summary>
    /// <param name="study">The study.</param>
    /// <param name="sitting">The sitting; null for the first that has steps left.</param>
    public static SittingOrder Of(Study study, string? sitting)
    {
        ArgumentNullException.ThrowIfNull(study);
        try
        {
            var open = study.SessionKeys.ToHashSet();
            var sealedOnes = open.Where(study.IsSealed).ToHashSet();
            var all = RunOrderFile.Read(study.Folder)
                .Select(step => new SittingStep(step, State(new SessionKey(step.Sitting, step.Condition), open, sealedOnes)))
                .ToList();
            var sittings = all.Select(step => step.Run.Sitting).Distinct().ToList();
            var chosen = sitting ?? all.FirstOrDefault(step => step.State != SittingStepState.Done)?.Run.Sitting ?? sittings.LastOrDefault() ?? "";
            return new SittingOrder(chosen, [.. all.Where(step => step.Run.Sitting == chosen)], sittings, null);
        }
        catch (ImportException problem)
        {
            return new SittingOrder(sitting ?? "", [], [], problem);
        }
    }

    private static SittingStepState State(SessionKey key, HashSet<SessionKey> known, HashSet<SessionKey> sealedOnes) =>
        sealedOnes.Contains(key) ? SittingStepState.Done : known.Contains(key) ? SittingStepState.Begun : SittingStepState.ToDo;
}
