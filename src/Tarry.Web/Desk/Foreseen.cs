using Tarry.Findings;
using Tarry.Web.Shelf;

namespace Tarry.Web.Desk;

/// <summary>What a study will say after a change that was tried on it.</summary>
/// <param name="From">The state of the study that it was tried on.</param>
/// <param name="Findings">The findings with the change.</param>
public sealed record Foreseen(StudyStamp From, FindingsDocument Findings);
