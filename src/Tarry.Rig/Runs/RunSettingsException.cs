namespace Tarry.Rig.Runs;

/// <summary>A run that was asked for cannot be: a value out of its range, or one that would spoil the data.</summary>
public sealed class RunSettingsException : Exception
{
    /// <summary>What is wrong and what to do about it.</summary>
    public RunSettingsException(string message, string remedy)
        : base($"{message} {remedy}") => Remedy = remedy;

    /// <summary>What the user can do about it.</summary>
    public string Remedy { get; }
}
