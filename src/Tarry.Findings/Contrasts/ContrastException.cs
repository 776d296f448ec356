namespace Tarry.Findings.Contrasts;

/// <summary>Two conditions that cannot be set against each other.</summary>
public sealed class ContrastException(string message, string remedy) : Exception(message)
{
    /// <summary>What to do.</summary>
    public string Remedy { get; } = remedy;
}
