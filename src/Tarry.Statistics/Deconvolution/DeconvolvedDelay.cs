namespace Tarry.Statistics.Deconvolution;

/// <summary>A delay's density on an even grid, told from the kernel that blurred it.</summary>
/// <param name="From">The first point: the middle of the first bin, ms.</param>
/// <param name="Step">Distance between points, ms.</param>
/// <param name="PerMs">The density at each point, 1/ms; sums to (1 - beyond) / step.</param>
/// <param name="Low">The low edge of the band at each point; never above the density.</param>
/// <param name="High">The high edge of the band at each point; never below the density.</param>
/// <param name="Iterations">How many iterations held-out data chose.</param>
/// <param name="BeyondShare">The share of latencies beyond the grid's end.</param>
public sealed record DeconvolvedDelay(
    double From,
    double Step,
    IReadOnlyList<double> PerMs,
    IReadOnlyList<double> Low,
    IReadOnlyList<double> High,
    int Iterations,
    double BeyondShare);
