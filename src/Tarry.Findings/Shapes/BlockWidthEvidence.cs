namespace Tarry.Findings.Shapes;

/// <summary>What a block width was told apart from the rest of the chain by.</summary>
public enum BlockWidthEvidence
{
    /// <summary>The frame wait and the noise of the chain are those of the reference, whose report interval is stated.</summary>
    ChainFromReference,

    /// <summary>The frame wait and the noise are those of the reference, whose report interval is not stated: anything that its shape allows.</summary>
    ChainFromReferenceOfUnstatedRate,

    /// <summary>The shape alone: the widest wait of the chain, whichever it is.</summary>
    ShapeAlone,
}
