using Tarry.Studies.Trials;

namespace Tarry.Imports.DelimitedText;

/// <summary>The words of the outcomes in long-form CSV.</summary>
internal static class OutcomeNames
{
    private static readonly string[] Words = ["response", "missed", "early", "refused"];

    /// <summary>The outcome of a word in any case, or null.</summary>
    public static Outcome? Parse(ReadOnlySpan<char> word)
    {
        for (var number = 0; number < Words.Length; number++)
        {
            if (word.Equals(Words[number], StringComparison.OrdinalIgnoreCase))
            {
                return (Outcome)number;
            }
        }

        return null;
    }

    /// <summary>The word of an outcome.</summary>
    public static string Word(Outcome outcome) => Words[(int)outcome];
}
