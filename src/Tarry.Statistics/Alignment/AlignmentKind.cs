namespace Tarry.Statistics.Alignment;

/// <summary>What the search for a relation between two clocks came to.</summary>
public enum AlignmentKind
{
    /// <summary>One relation, and no other nearly as good.</summary>
    Found,

    /// <summary>There are too few presses to tell.</summary>
    TooFewPresses,

    /// <summary>No relation has answers behind most of the presses.</summary>
    NoMatch,

    /// <summary>Several do: the presses come at too regular intervals to tell which answer belongs to which.</summary>
    SeveralMatches,
}
