using System.CommandLine;

namespace Tarry.Commands;

/// <summary>The seed of whatever is random.</summary>
internal static class SeedOption
{
    public static Option<uint> Create() => new("--seed")
    {
        Description = "Seed of whatever is random: the same seed gives the same answer.",
        DefaultValueFactory = _ => 1,
    };
}
