using System.CommandLine;

namespace Tarry.Commands;

/// <summary>Options that belong together in a command's help.</summary>
/// <param name="Heading">For what they are.</param>
/// <param name="Options">The options.</param>
internal sealed record OptionGroup(string Heading, IReadOnlyList<Option> Options);
