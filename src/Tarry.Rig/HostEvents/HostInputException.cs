namespace Tarry.Rig.HostEvents;

/// <summary>An input device of the host cannot be used, and what the user can do about it.</summary>
public sealed class HostInputException : Exception
{
    /// <summary>A failure with its remedy.</summary>
    public HostInputException(string message, string remedy)
        : base($"{message} {remedy}") => Remedy = remedy;

    /// <summary>What the user can do about it.</summary>
    public string Remedy { get; }
}
