namespace Tarry.Imports.DelimitedText;

/// <summary>Why one row is refused.</summary>
/// <param name="Problem">The kind of reason.</param>
/// <param name="Reason">The reason, with the value that was met.</param>
internal readonly record struct RowRefusal(RowProblem Problem, string Reason);
