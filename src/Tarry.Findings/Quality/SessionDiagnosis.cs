using Tarry.Findings.Samples;

namespace Tarry.Findings.Quality;

/// <summary>What the order of a session's trials shows, and whether it may enter the pooled variance.</summary>
internal sealed record SessionDiagnosis(SessionSample Session, IReadOnlyList<Caution> Cautions)
{
    private static readonly CautionKind[] UndoesAnAssumption =
        [CautionKind.Drift, CautionKind.ChangePoint, CautionKind.Dependence, CautionKind.PhaseLocked, CautionKind.Beat];

    public bool InPool => Session.Latencies.Count >= 2 && !Cautions.Any(caution => UndoesAnAssumption.Contains(caution.Kind));
}
