namespace Tarry.Imports.PacketCapture.Files;

/// <summary>From the ticks of an interface to nanoseconds since 1970.</summary>
/// <param name="Power">Ticks a second as a power: 10^n or 2^n with n up to 127 (pcapng, option if_tsresol).</param>
/// <param name="Binary">Whether it is a power of two.</param>
/// <param name="OffsetSeconds">Seconds to add (option if_tsoffset).</param>
internal readonly record struct TimestampScale(int Power, bool Binary, long OffsetSeconds)
{
    /// <summary>pcapng without the option.</summary>
    public static readonly TimestampScale Microseconds = new(6, false, 0);

    /// <summary>The time to the nearest nanosecond, halves up; null beyond what 64 bits hold.</summary>
    public long? Nanoseconds(ulong ticks)
    {
        if (!Binary && Power == 6 && OffsetSeconds == 0)
        {
            return ticks <= long.MaxValue / 1_000 ? (long)ticks * 1_000 : null;
        }

        var nanoseconds = Binary ? FromBinary(ticks) : FromDecimal(ticks);
        if (nanoseconds is not { } unshifted)
        {
            return null;
        }

        var shifted = unshifted + ((Int128)OffsetSeconds * 1_000_000_000);
        return shifted >= long.MinValue && shifted <= long.MaxValue ? (long)shifted : null;
    }

    private Int128? FromDecimal(ulong ticks)
    {
        UInt128 value = ticks;
        if (Power <= 9)
        {
            for (var power = Power; power < 9; power++)
            {
                value *= 10;
            }

            return value <= (UInt128)Int128.MaxValue ? (Int128)value : null;
        }

        UInt128 divisor = 1;
        for (var power = 9; power < Math.Min(Power, 30); power++)
        {
            divisor *= 10;
        }

        return (Int128)((value + (divisor / 2)) / divisor);
    }

    private Int128? FromBinary(ulong ticks)
    {
        var scaled = (UInt128)ticks * 1_000_000_000;
        return Power == 0 ? (Int128)scaled
            : Power >= 96 ? 0
            : (Int128)((scaled + (UInt128.One << (Power - 1))) >> Power);
    }
}
