using Tarry.Studies;

namespace Tarry.Web.Shelf;

/// <summary>A study on the shelf: what its folder is called, and what it is or why it cannot be read.</summary>
/// <param name="Name">Its place below the shelf's folder, with <c>/</c>: what stands in addresses.</param>
/// <param name="Title">Its title; null where it cannot be read.</param>
/// <param name="Study">The study; null where it cannot be read.</param>
/// <param name="ChangedAt">When its data last changed.</param>
/// <param name="Problem">Why it cannot be read; null where it can.</param>
public sealed record ShelfEntry(string Name, string? Title, Study? Study, DateTimeOffset ChangedAt, StudyException? Problem);
