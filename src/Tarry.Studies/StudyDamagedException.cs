namespace Tarry.Studies;

/// <summary>A file of the study is not what was written: bits flipped, parts missing, or edited by hand.</summary>
public sealed class StudyDamagedException : StudyException
{
    internal StudyDamagedException(string message, string place, string remedy, Exception? inner = null)
        : base(message, place, remedy, inner)
    {
    }
}
