namespace Tarry.Web.Publishing;

/// <summary>A file of the study's folder <c>report</c>.</summary>
/// <param name="Name">Its path inside that folder, with <c>/</c>.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="WrittenAt">When it was written.</param>
public sealed record PublishedFile(string Name, long Bytes, DateTimeOffset WrittenAt);
