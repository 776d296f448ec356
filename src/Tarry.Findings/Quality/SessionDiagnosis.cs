using Tarry.Findings.Samples;

namespace Tarry.Findings.Quality;

/// <summary>What the order of a session's trials shows, and whether it may enter the pooled variance.</summary>
internal sealed record SessionDiagnosis(SessionSample Session, IReadOnlyList<Caution> Cautions)
{
    private static readonly CautionKind[] UndoesAnAssumption =
        [CautionKind.Drift, CautionKind.ChangePoint, CautionKind.Dependence, CautionKind.PhaseLocked, CautionKind.Beat];

    /// <summary>Its cautions that undo what a mean over sessions assumes.</summary>
    public IReadOnlyList<Caution> Undoing => [.. Cautions.Where(caution => UndoesAnAssumption.Contains(caution.Kind))];

    public bool InPool => Session.Latencies.Count >= 2 && Undoing.Count == 0;
}
