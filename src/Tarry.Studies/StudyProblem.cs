namespace Tarry.Studies;

/// <summary>Something that is wrong with a study.</summary>
/// <param name="Kind">What kind.</param>
/// <param name="Place">Where: a file by its path in the study, with what more is known.</param>
/// <param name="Message">What, in words.</param>
/// <param name="Remedy">What can be done.</param>
public sealed record StudyProblem(StudyProblemKind Kind, string Place, string Message, string Remedy);
