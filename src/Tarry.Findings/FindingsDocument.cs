using Tarry.Findings.Comparisons;
using Tarry.Findings.Conditions;
using Tarry.Findings.Exclusions;
using Tarry.Findings.Factors;
using Tarry.Findings.Play;
using Tarry.Findings.Quality;
using Tarry.Findings.ReportStreams;
using Tarry.Findings.Sticks;
using Tarry.Studies.Sessions;

namespace Tarry.Findings;

/// <summary>All that a study says: what the command line prints, the report and the pages are drawn from.</summary>
/// <remarks>It holds no machine path, and no time but those in the data: the same study and seed give the same document.</remarks>
public sealed record FindingsDocument
{
    /// <summary>The study's title.</summary>
    public required string Title { get; init; }

    /// <summary>The reference condition's id, or null where the study names none.</summary>
    public required string? Reference { get; init; }

    /// <summary>The smallest difference that matters, in milliseconds.</summary>
    public required double MarginMs { get; init; }

    /// <summary>The seed of whatever is resampled.</summary>
    public required ulong Seed { get; init; }

    /// <summary>The version of the program that found this.</summary>
    public required string Version { get; init; }

    /// <summary>The counts over all conditions, and rows of imports that belong to none.</summary>
    public required SessionCounts Counts { get; init; }

    /// <summary>The conditions that have data, in the study file's order.</summary>
    public required IReadOnlyList<ConditionFinding> Conditions { get; init; }

    /// <summary>Every pair of conditions once, in the order of <see cref="Conditions"/>.</summary>
    public required IReadOnlyList<ComparisonFinding> Comparisons { get; init; }

    /// <summary>The conditions from soonest to latest mean.</summary>
    public required IReadOnlyList<RankedCondition> Ranking { get; init; }

    /// <summary>The report streams of the study, which are no latencies; null or empty where it has none.</summary>
    public IReadOnlyList<ReportStreamFinding>? ReportStreams { get; init; }

    /// <summary>How truly sticks say where they are; null where the study has no recording of one.</summary>
    public StudySticks? Sticks { get; init; }

    /// <summary>Recordings of reports and sticks that the study file sets aside; null or empty where it has none.</summary>
    public IReadOnlyList<RecordingSetAside>? SetAside { get; init; }

    /// <summary>What each factor does that differs alone between conditions, layers first; null where the document was made without.</summary>
    public IReadOnlyList<FactorFinding>? Factors { get; init; }

    /// <summary>What the latencies mean for play; null where no condition has a used trial.</summary>
    public StudyPlay? Play { get; init; }

    /// <summary>Cautions that concern the study as a whole.</summary>
    public required IReadOnlyList<Caution> Cautions { get; init; }
}
