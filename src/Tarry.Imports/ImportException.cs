namespace Tarry.Imports;

/// <summary>An input of which nothing could be kept: what is wrong, where, and what to do about it. Nothing has been made.</summary>
/// <param name="problem">What is wrong, in words.</param>
/// <param name="place">Where: a file, with a line where there is one.</param>
/// <param name="remedy">What the user can do.</param>
/// <param name="cause">What raised it, where something did.</param>
public sealed class ImportException(string problem, string place, string remedy, Exception? cause = null)
    : Exception($"{place}: {problem} {remedy}", cause)
{
    /// <summary>What is wrong, in words.</summary>
    public string Problem { get; } = problem;

    /// <summary>Where: a file, with a line where there is one.</summary>
    public string Place { get; } = place;

    /// <summary>What the user can do.</summary>
    public string Remedy { get; } = remedy;
}
