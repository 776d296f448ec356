using Tarry.Studies.Sticks;

namespace Tarry.Rig.Sticks.Recording;

/// <summary>What became of a recording.</summary>
/// <param name="IsComplete">Whether all steps were done.</param>
/// <param name="Session">What was sealed; null where no reading of the procedure came, or it was discarded: then nothing is kept.</param>
public sealed record StickCaptureResult(bool IsComplete, StickSession? Session);
