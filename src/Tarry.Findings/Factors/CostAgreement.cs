using Tarry.Metrology;

namespace Tarry.Findings.Factors;

/// <summary>Whether a level costs the same in several settings: on several devices, or on one by several links.</summary>
/// <param name="Settings">In how many settings of all other factors the level was measured against its baseline.</param>
/// <param name="F">The mean square between the settings' costs over that of their own scatter.</param>
/// <param name="P">The probability of such an F were the costs alike.</param>
/// <param name="Least">The smallest cost of a setting.</param>
/// <param name="Greatest">The largest.</param>
/// <param name="Differ">Whether the costs are told apart, at 5 %.</param>
public sealed record CostAgreement(
    int Settings,
    double F,
    double P,
    LatencyDifference Least,
    LatencyDifference Greatest,
    bool Differ);
