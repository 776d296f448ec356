namespace Tarry.Web.Comparing;

/// <summary>A pair in the matrix of verdicts: the condition of the row against that of the column.</summary>
/// <param name="A">The condition of the row.</param>
/// <param name="B">The condition of the column.</param>
/// <param name="Sign">What is said, in a sign or a number.</param>
/// <param name="Kind">The verdict in a word, for the style.</param>
/// <param name="Words">The same in words, with the difference.</param>
public sealed record MatrixCell(string A, string B, string Sign, string Kind, string Words);
