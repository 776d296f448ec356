using Tarry.Metrology;

namespace Tarry.Findings.Factors;

/// <summary>Whether a level costs the same on several devices.</summary>
/// <param name="Devices">How many devices, each with all its other factors held.</param>
/// <param name="F">The mean square between the devices' costs over that of their own scatter.</param>
/// <param name="P">The probability of such an F were the costs alike.</param>
/// <param name="Least">The smallest cost of a device.</param>
/// <param name="Greatest">The largest.</param>
/// <param name="Differ">Whether the devices are told apart, at 5 %.</param>
public sealed record DeviceAgreement(
    int Devices,
    double F,
    double P,
    LatencyDifference Least,
    LatencyDifference Greatest,
    bool Differ);
