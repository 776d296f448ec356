namespace Tarry.Reports.Documents;

/// <summary>What the author of a report puts before it, and leaves out of it.</summary>
/// <param name="Title">A title other than the study's; null or blank for the study's.</param>
/// <param name="Notes">Notes to readers, in plain text; an empty line begins a paragraph. Null or blank for none.</param>
/// <param name="LeftOut">The names of figures that the report does without, as in <see cref="Figures.StudyFigure.Name"/>; null for none.</param>
public sealed record ReportPreface(string? Title, string? Notes, IReadOnlySet<string>? LeftOut = null);
