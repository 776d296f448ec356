using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>Puts L2CAP frames together from the ACL packets of one link in one direction (Bluetooth Core, volume 3 part A, 7.2).</summary>
internal sealed class L2capAssembly
{
    private const int FrameHead = 4;
    private const int Continuing = 1;
    private byte[] frame = [];
    private int filled;
    private int wanted;

    /// <summary>Takes an ACL packet's data.</summary>
    /// <param name="boundary">Its packet boundary flag.</param>
    /// <param name="data">Its data.</param>
    /// <param name="whole">The frame, header and all, once it is whole; it holds until the next call.</param>
    /// <returns>What is wrong, in words; null if nothing is.</returns>
    public string? Take(int boundary, ReadOnlySpan<byte> data, out ReadOnlySpan<byte> whole)
    {
        whole = default;
        if (boundary == Continuing)
        {
            if (wanted == 0)
            {
                return "a continuing fragment follows none";
            }

            return Append(data, out whole);
        }

        var defect = wanted > 0 ? $"a frame of {wanted} bytes ends after {filled}" : null;
        wanted = 0;
        if (data.Length < FrameHead)
        {
            return defect ?? $"a first fragment of {data.Length} bytes is shorter than the frame's header";
        }

        var length = FrameHead + BinaryPrimitives.ReadUInt16LittleEndian(data);
        if (data.Length > length)
        {
            return defect ?? $"a first fragment of {data.Length} bytes is longer than its frame of {length}";
        }

        if (data.Length == length)
        {
            // The usual case: nothing to keep.
            whole = data;
            return defect;
        }

        if (frame.Length < length)
        {
            frame = new byte[length];
        }

        (wanted, filled) = (length, 0);
        return Append(data, out whole) ?? defect;
    }

    private string? Append(ReadOnlySpan<byte> data, out ReadOnlySpan<byte> whole)
    {
        whole = default;
        if (filled + data.Length > wanted)
        {
            var defect = $"fragments of {filled + data.Length} bytes are more than their frame of {wanted}";
            wanted = 0;
            return defect;
        }

        data.CopyTo(frame.AsSpan(filled));
        filled += data.Length;
        if (filled == wanted)
        {
            whole = frame.AsSpan(0, wanted);
            wanted = 0;
        }

        return null;
    }
}
