namespace Tarry.Studies;

/// <summary>The disk did not take or give what it was asked: full, read-only, unplugged.</summary>
public sealed class StudyDiskException : StudyException
{
    internal StudyDiskException(string message, string? place, string remedy, Exception? inner = null)
        : base(message, place, remedy, inner)
    {
    }
}
