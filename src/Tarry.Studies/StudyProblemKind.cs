namespace Tarry.Studies;

/// <summary>What kind of problem a check found.</summary>
public enum StudyProblemKind
{
    /// <summary>The manifest lists a file that is not there.</summary>
    FileMissing,

    /// <summary>A file is there that the manifest does not list.</summary>
    FileNotListed,

    /// <summary>A file's SHA-256 is not the one in the manifest.</summary>
    FileChanged,

    /// <summary>A file cannot be read.</summary>
    FileUnreadable,

    /// <summary>A journal is damaged before its last line.</summary>
    JournalDamaged,

    /// <summary>The counts of <c>session.json</c> are not those of the trials.</summary>
    CountsDisagree,

    /// <summary>A trial breaks a rule: sequence number, segment, latency, outcome.</summary>
    TrialBroken,

    /// <summary>A column of a report's fields does not hold what the bytes of the report say.</summary>
    ReportsDisagree,

    /// <summary>Press times go back within a segment.</summary>
    PressTimesNotAscending,

    /// <summary>A session is of a condition that the study file does not declare.</summary>
    ConditionNotDeclared,

    /// <summary>An exclusion is of a session, or of trials, that the study does not have.</summary>
    ExclusionWithoutTrials,
}
