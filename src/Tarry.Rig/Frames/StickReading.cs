namespace Tarry.Rig.Frames;

/// <summary>One reading of both wipers, 0 to 1,023.</summary>
/// <param name="X">Of x.</param>
/// <param name="Y">Of y.</param>
public readonly record struct StickReading(ushort X, ushort Y)
{
    /// <summary>The greatest count: the converter has 10 bits.</summary>
    public const int Greatest = 0x3ff;
}
