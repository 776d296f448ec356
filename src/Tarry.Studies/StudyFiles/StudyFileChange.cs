namespace Tarry.Studies.StudyFiles;

/// <summary>A change to the study file that can be taken back as long as nothing else has changed it.</summary>
/// <param name="Before">Its text before.</param>
/// <param name="After">Its text after.</param>
public sealed record StudyFileChange(string Before, string After);
