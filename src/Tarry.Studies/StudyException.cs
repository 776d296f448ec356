namespace Tarry.Studies;

/// <summary>A study that cannot be opened, read or changed: what is wrong, where, and what to do about it.</summary>
public class StudyException : Exception
{
    /// <summary>What is wrong, where, and the remedy.</summary>
    public StudyException(string message, string? place, string remedy, Exception? inner = null)
        : base(message, inner)
    {
        Place = place;
        Remedy = remedy;
    }

    /// <summary>Where: a file of the study by its path inside it, with line and column or byte where known; null if nowhere in particular.</summary>
    public string? Place { get; }

    /// <summary>What the user can do about it.</summary>
    public string Remedy { get; }
}
