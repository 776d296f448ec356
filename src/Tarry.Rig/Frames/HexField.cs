namespace Tarry.Rig.Frames;

/// <summary>Lower-case hex digits, nothing else.</summary>
internal static class HexField
{
    /// <summary>Reads up to 16 digits.</summary>
    public static bool TryRead(ReadOnlySpan<byte> digits, out ulong value)
    {
        value = 0;
        foreach (var digit in digits)
        {
            if (!TryAppend(ref value, (char)digit))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Reads up to 16 digits.</summary>
    public static bool TryRead(ReadOnlySpan<char> digits, out ulong value)
    {
        value = 0;
        foreach (var digit in digits)
        {
            if (!TryAppend(ref value, digit))
            {
                return false;
            }
        }

        return true;
    }

    private static bool TryAppend(ref ulong value, char digit)
    {
        var four = digit switch
        {
            >= '0' and <= '9' => digit - '0',
            >= 'a' and <= 'f' => digit - 'a' + 10,
            _ => -1,
        };
        value = (value << 4) | (uint)four;
        return four >= 0;
    }
}
