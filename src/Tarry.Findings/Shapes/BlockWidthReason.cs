namespace Tarry.Findings.Shapes;

/// <summary>Why a shape gives no block width, but at most a limit.</summary>
public enum BlockWidthReason
{
    /// <summary>The interval of the width reaches down to nothing.</summary>
    IncludesZero,

    /// <summary>The interval of the width is wider than 25 % to either side.</summary>
    TooWide,

    /// <summary>Without the reference two waits of about one width cannot be told apart.</summary>
    WaitsNotApart,

    /// <summary>The latencies are not in a block: they form lumps, a tail or a normal curve.</summary>
    NoBlock,

    /// <summary>It is the reference, from which the chain is taken.</summary>
    IsTheReference,

    /// <summary>Too few responses.</summary>
    TooFewTrials,
}
