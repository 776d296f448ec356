namespace Tarry.Rig;

/// <summary>The rig failed, and what the user can do about it.</summary>
public sealed class RigException : Exception
{
    /// <summary>A failure with its remedy.</summary>
    public RigException(string message, string remedy, Exception? inner = null)
        : base($"{message} {remedy}", inner) => Remedy = remedy;

    /// <summary>What the user can do about it.</summary>
    public string Remedy { get; }
}
