using Tarry.Reports.Wording;

namespace Tarry.Reports.Figures;

/// <summary>What stands beside the marks of a row about a stick.</summary>
/// <param name="Name">Of what it is.</param>
/// <param name="Value">Its value in figures.</param>
/// <param name="Bounds">The value's interval; empty for none.</param>
/// <param name="Verdict">What is wrong in it.</param>
/// <param name="Basis">On what that rests.</param>
internal sealed record StickRow(string Name, string Value, string Bounds, StickVerdict Verdict, string Basis)
{
    /// <summary>All of it in a sentence.</summary>
    public string Sentence => $"{Name}: {Value}{(Bounds.Length > 0 ? $", {Bounds}" : "")}; {Verdict.Text}; {Basis}.";
}
