namespace Tarry.Studies;

/// <summary>Another program is writing to the study.</summary>
public sealed class StudyLockedException : StudyException
{
    internal StudyLockedException(string message, LockHolder? holder)
        : base(message, null, "Let that program finish, or end it; reading is possible all the while.") => Holder = holder;

    /// <summary>Who holds the lock; null if it did not say.</summary>
    public LockHolder? Holder { get; }
}
