using Tarry.Rig.Frames;

namespace Tarry.Rig.SimulatedBench;

/// <summary>A checked command as the rig reads it.</summary>
/// <param name="Kind">The command's letter.</param>
/// <param name="Number">Its number; 0 for <c>k</c>, which has none.</param>
/// <param name="Fields">The fields after the number.</param>
internal sealed record HostLine(char Kind, byte Number, IReadOnlyList<string> Fields)
{
    /// <summary>Reads a line; null if it is bad: the rig counts it and goes on.</summary>
    public static HostLine? Parse(ReadOnlyMemory<byte> line, long length)
    {
        if (FrameCheck.Check(line.Span, length, out var body) is not null)
        {
            return null;
        }

        var parts = body.Split(' ');
        if (parts[0].Length != 1 || parts.Length < 2)
        {
            return null;
        }

        if (parts[0] == "k")
        {
            return new HostLine('k', 0, parts[1..]);
        }

        return parts[1].Length == 2 && HexField.TryRead(parts[1], out var number)
            ? new HostLine(parts[0][0], (byte)number, parts[2..])
            : null;
    }

    /// <summary>A field as a number of a fixed width.</summary>
    public uint? Number32(int index, int width) =>
        index < Fields.Count && Fields[index].Length == width && HexField.TryRead(Fields[index], out var value) ? (uint)value : null;
}
