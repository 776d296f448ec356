namespace Tarry.Web.Shelf;

/// <summary>Where the dates of a study are from.</summary>
public enum StudyDateSource
{
    /// <summary>Every sitting is named by its day.</summary>
    SittingNames,

    /// <summary>The times of the files, which a copy may have changed.</summary>
    FileTimes,

    /// <summary>The names of some sittings, the files' times of the others.</summary>
    Both,
}
