namespace Tarry.Statistics.Quantiles;

/// <summary>The nine sample quantiles of R. J. Hyndman and Y. Fan (Amer. Statist. 50, 1996), by their numbers there.</summary>
public enum QuantileType
{
    /// <summary>Inverse of the empirical distribution function.</summary>
    InverseOfDistribution = 1,

    /// <summary>The same, averaged at steps.</summary>
    AveragedInverseOfDistribution = 2,

    /// <summary>The nearest even order statistic.</summary>
    NearestEven = 3,

    /// <summary>Linear interpolation of the empirical distribution function.</summary>
    InterpolatedDistribution = 4,

    /// <summary>Knots midway through the steps.</summary>
    Midway = 5,

    /// <summary>Knots at the expected positions k/(n + 1).</summary>
    ExpectedPosition = 6,

    /// <summary>Knots at the modes (k - 1)/(n - 1): the default of R and of NumPy, and the one of every result here.</summary>
    ModalPosition = 7,

    /// <summary>Knots at about the median positions, (k - 1/3)/(n + 1/3).</summary>
    MedianPosition = 8,

    /// <summary>About unbiased for normal values, (k - 3/8)/(n + 1/4).</summary>
    NormalUnbiased = 9,
}
