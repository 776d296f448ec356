namespace Tarry.Imports.DelimitedText;

/// <summary>The kinds of reason in words.</summary>
internal static class RowProblems
{
    public static string Describe(RowProblem problem) => problem switch
    {
        RowProblem.CannotBeSplit => "the row cannot be split into cells",
        RowProblem.WrongNumberOfCells => "the row has another number of cells than the header",
        RowProblem.NoSession => "the condition or the sitting is missing or cannot be told from another",
        RowProblem.FactorConflict => "the row gives its condition another factor level than rows before it or the study file",
        RowProblem.NotANumber => "text where a number belongs",
        RowProblem.OutOfRange => "a number outside its range",
        RowProblem.UnknownOutcome => "an outcome that is not response, missed, early or refused",
        RowProblem.OutcomeAndLatencyDisagree => "the outcome and the latency contradict each other",
        RowProblem.DuplicateSequence => "a sequence number that the session already has",
        RowProblem.MarkedRefused => "marked as refused in the file",
        RowProblem.TimeGoesBack => "a time before that of the row before",
        _ => throw new ArgumentOutOfRangeException(nameof(problem), problem, "Not a kind of reason."),
    };
}
