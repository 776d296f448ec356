namespace Tarry.Statistics.Edges;

/// <summary>What a search for a change of light came to.</summary>
public enum LightStepKind
{
    /// <summary>One change, timed.</summary>
    Found,

    /// <summary>Nothing that stands out of the noise.</summary>
    None,

    /// <summary>A change that hardly stands out of the noise.</summary>
    Weak,

    /// <summary>A smaller change before the large one: which of them is the response cannot be told.</summary>
    Several,

    /// <summary>The light was not steady before the change.</summary>
    Unsteady,

    /// <summary>The light did not stay long enough to tell how bright it became.</summary>
    TooShort,
}
