using System.Buffers.Binary;

namespace Tarry.Imports.PacketCapture.Bluetooth;

/// <summary>Finds the HID report descriptor in answers of service discovery (Bluetooth HID profile, attribute HIDDescriptorList).</summary>
internal sealed class ServiceRecords
{
    private const int ServiceAttributeResponse = 5;
    private const int ServiceSearchAttributeResponse = 7;
    private const int LongestRecords = 1 << 18;
    private readonly List<byte> records = [];

    /// <summary>The descriptor; null where none was sent.</summary>
    public byte[]? ReportDescriptor { get; private set; }

    /// <summary>Takes an answer; a long one comes in parts.</summary>
    public void Take(ReadOnlySpan<byte> answer)
    {
        if (answer.Length < 8 || answer[0] is not (ServiceAttributeResponse or ServiceSearchAttributeResponse))
        {
            return;
        }

        var count = BinaryPrimitives.ReadUInt16BigEndian(answer[5..]);
        if (count > answer.Length - 8 || records.Count + count > LongestRecords)
        {
            records.Clear();
            return;
        }

        records.AddRange(answer.Slice(7, count));
        // The length of the continuation state: 0 where this was the last part.
        if (answer[7 + count] == 0)
        {
            ReportDescriptor = Find([.. records]) ?? ReportDescriptor;
            records.Clear();
        }
    }

    /// <summary>Attribute 0x0206 is a sequence of sequences, each of a descriptor type and a string of its bytes.</summary>
    private static byte[]? Find(ReadOnlySpan<byte> attributes)
    {
        var at = attributes.IndexOf((ReadOnlySpan<byte>)[0x09, 0x02, 0x06]);
        return at >= 0
            && Element(attributes[(at + 3)..], 6, out var list)
            && Element(list, 6, out var entry)
            && entry.Length > 2 && entry[0] == 0x08 && entry[1] == 0x22
            && Element(entry[2..], 4, out var descriptor)
                ? descriptor.ToArray()
                : null;
    }

    /// <summary>A data element of a type whose length is in one, two or four bytes (volume 3 part B, 3.2).</summary>
    private static bool Element(ReadOnlySpan<byte> from, int type, out ReadOnlySpan<byte> content)
    {
        content = default;
        if (from.IsEmpty || from[0] >> 3 != type)
        {
            return false;
        }

        var sizeBytes = (from[0] & 7) switch { 5 => 1, 6 => 2, 7 => 4, _ => 0 };
        if (sizeBytes == 0 || from.Length < 1 + sizeBytes)
        {
            return false;
        }

        var length = sizeBytes switch
        {
            1 => from[1],
            2 => BinaryPrimitives.ReadUInt16BigEndian(from[1..]),
            _ => BinaryPrimitives.ReadUInt32BigEndian(from[1..]),
        };
        if (length > from.Length - 1 - sizeBytes)
        {
            return false;
        }

        content = from.Slice(1 + sizeBytes, (int)length);
        return true;
    }
}
