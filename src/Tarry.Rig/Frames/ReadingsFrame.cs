namespace Tarry.Rig.Frames;

/// <summary><c>S</c>: readings of a stick's wipers, in a row.</summary>
/// <param name="Boot">The rig's boot counter.</param>
/// <param name="First">The number of the first, counted from 1 since the stream began.</param>
/// <param name="Ticks">When the first was due; the others follow at the stream's interval.</param>
/// <param name="Lost">Readings that found no room in the rig since the stream began; sticks at 65,535.</param>
/// <param name="Readings">One to six readings.</param>
public sealed record ReadingsFrame(ushort Boot, uint First, ulong Ticks, ushort Lost, IReadOnlyList<StickReading> Readings) : RigFrame(Boot)
{
    /// <inheritdoc/>
    public bool Equals(ReadingsFrame? other) =>
        other is not null && (Boot, First, Ticks, Lost) == (other.Boot, other.First, other.Ticks, other.Lost) && Readings.SequenceEqual(other.Readings);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Boot, First, Ticks, Lost, Readings.Count);
}
