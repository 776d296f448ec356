using Tarry.Studies.Calibrations;

namespace Tarry.Rig.Proofs;

/// <summary>What a rig proved.</summary>
/// <param name="Points">Point by point.</param>
/// <param name="Calibration">What it says of the rig; null where nothing came round the loop.</param>
public sealed record ProofResult(IReadOnlyList<ProofPoint> Points, RigCalibration? Calibration)
{
    /// <summary>Whether no point failed.</summary>
    public bool Passed => Points.All(point => point.Passed != false);
}
