namespace Tarry.Statistics.Shapes;

/// <summary>The family that a distribution of latencies is taken from: a fixed delay, and what varies.</summary>
public enum ShapeFamily
{
    /// <summary>A fixed delay and normal noise.</summary>
    Normal,

    /// <summary>One block: a wait, uniform over an interval, and normal noise.</summary>
    UniformNormal,

    /// <summary>Two blocks added: two independent uniform waits and normal noise.</summary>
    UniformUniformNormal,

    /// <summary>Normal noise and an exponential wait: a long tail to the right.</summary>
    ExponentiallyModifiedNormal,

    /// <summary>A mixture of two normal lumps.</summary>
    TwoNormalLumps,

    /// <summary>A mixture of two blocks of one width, the second later than the first.</summary>
    TwoUniformLumps,
}
