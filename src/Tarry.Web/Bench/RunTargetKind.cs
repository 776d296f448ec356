namespace Tarry.Web.Bench;

/// <summary>When a run has enough.</summary>
public enum RunTargetKind
{
    /// <summary>After so many trials.</summary>
    Trials,

    /// <summary>When the mean is known so well.</summary>
    HalfWidth,

    /// <summary>When it is stopped by hand.</summary>
    ByHand,
}
