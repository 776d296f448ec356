using System.Buffers.Binary;

namespace Tarry.Rig.HostEvents.Recording;

/// <summary>Makes reports of fixed length of changes: of every chosen code where it stands, in order, as 32-bit numbers, little-endian. Nothing else is kept.</summary>
public sealed class ReportState
{
    private const int Bytes = RecordedCode.Bits / 8;
    private readonly IReadOnlyList<RecordedCode> codes;
    private readonly byte[] state;
    private readonly Dictionary<RecordedCode, int> places;

    /// <summary>A state before the first report.</summary>
    /// <param name="codes">The chosen codes.</param>
    /// <param name="axes">Where the device's axes stand: one that does not move tells no change, and stands there still.</param>
    public ReportState(IReadOnlyList<RecordedCode> codes, IReadOnlyList<InputAxis> axes)
    {
        ArgumentNullException.ThrowIfNull(axes);
        this.codes = codes;
        state = new byte[Bytes * codes.Count];
        places = codes.Select((code, index) => (code, index)).ToDictionary(entry => entry.code, entry => entry.index);
        foreach (var axis in axes)
        {
            if (places.TryGetValue(new RecordedCode(InputCode.Absolute, axis.Code), out var index))
            {
                Set(index, axis.Value);
            }
        }
    }

    /// <summary>Takes a report.</summary>
    /// <returns>The state after it; empty if it holds none of the chosen codes.</returns>
    public ReadOnlySpan<byte> Take(InputReport report)
    {
        for (var index = 0; index < codes.Count; index++)
        {
            if (codes[index].Type == InputCode.Relative)
            {
                Set(index, 0);
            }
        }

        var chosen = false;
        foreach (var change in report.Events)
        {
            if (places.TryGetValue(new RecordedCode(change.Type, change.Code), out var index))
            {
                Set(index, change.Value);
                chosen = true;
            }
        }

        return chosen ? state : [];
    }

    private void Set(int index, int value) => BinaryPrimitives.WriteInt32LittleEndian(state.AsSpan(Bytes * index), value);
}
