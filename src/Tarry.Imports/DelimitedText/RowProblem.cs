namespace Tarry.Imports.DelimitedText;

/// <summary>The kinds of reason for which a row is refused.</summary>
internal enum RowProblem
{
    CannotBeSplit,
    WrongNumberOfCells,
    NoSession,
    FactorConflict,
    NotANumber,
    OutOfRange,
    UnknownOutcome,
    OutcomeAndLatencyDisagree,
    DuplicateSequence,
    MarkedRefused,
    TimeGoesBack,
}
