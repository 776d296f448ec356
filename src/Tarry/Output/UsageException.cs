namespace Tarry.Output;

/// <summary>A command was used in a way that cannot work.</summary>
internal sealed class UsageException(string message, string remedy) : Exception(message)
{
    public string Remedy { get; } = remedy;
}
