using Tarry.Statistics.Edges;

namespace Tarry.Imports.UsbWire;

/// <summary>Turns the levels of D+ and D- into packets.</summary>
/// <remarks>
/// Universal Serial Bus Specification 2.0, chapter 7.1 (from memory): NRZI, a change is a 0 and none is a 1; after six ones a 0 is stuffed;
/// a packet begins with the bits 00000001 and ends with both lines low for two bit times. Every change sets the bit clock anew, so
/// that a device's clock may be off by some per cent. Both lines low for less than half a bit is the skew of a change.
/// </remarks>
internal sealed class UsbLineDecoder
{
    /// <summary>A data packet has at most 1,023 bytes at these speeds; with identifier, check sum and synchronisation.</summary>
    private const int MostBits = 8 * 1_030;
    private readonly double bitTime;
    private readonly bool idleIsPlus;
    private readonly Action<UsbPacket> found;
    private readonly Action failed;
    private readonly List<bool> bits = [];
    private bool? plusHigh;
    private long lastChange;
    private long packetStart;
    private long bothLowSince = -1;
    private bool inPacket;

    public UsbLineDecoder(UsbCableSpeed speed, double unitsASecond, Action<UsbPacket> found, Action failed)
    {
        bitTime = unitsASecond / (speed == UsbCableSpeed.Low ? 1.5e6 : 12e6);
        idleIsPlus = speed == UsbCableSpeed.Full;
        (this.found, this.failed) = (found, failed);
    }

    /// <summary>The levels of D+ and D- from a time on.</summary>
    public void Step(long time, SignalLevel plus, SignalLevel minus)
    {
        if (bothLowSince >= 0 && time - bothLowSince > bitTime / 2)
        {
            EndPacket(bothLowSince);
            plusHigh = null;
        }

        var bothLow = plus == SignalLevel.Low && minus == SignalLevel.Low;
        if (!bothLow)
        {
            bothLowSince = -1;
        }
        else if (bothLowSince < 0)
        {
            bothLowSince = time;
        }

        if (plus == minus || plus == SignalLevel.Unknown || minus == SignalLevel.Unknown)
        {
            inPacket &= plus != SignalLevel.Unknown && minus != SignalLevel.Unknown;
            return;
        }

        var isPlus = plus == SignalLevel.High;
        if (plusHigh == isPlus)
        {
            return;
        }

        var wasIdle = plusHigh == idleIsPlus;
        plusHigh = isPlus;
        if (inPacket)
        {
            AppendBits(time, changed: true);
        }
        else if (wasIdle)
        {
            (inPacket, packetStart) = (true, time);
            bits.Clear();
            bits.Add(false);
        }

        lastChange = time;
    }

    private void AppendBits(long time, bool changed)
    {
        var count = (int)Math.Min(MostBits, Math.Round((time - lastChange) / bitTime));
        for (var index = 1; index < count; index++)
        {
            bits.Add(true);
        }

        if (changed)
        {
            bits.Add(false);
        }

        if (bits.Count > MostBits)
        {
            inPacket = false;
            failed();
        }
    }

    private void EndPacket(long time)
    {
        if (!inPacket)
        {
            return;
        }

        inPacket = false;
        AppendBits(time, changed: false);
        if (UsbPacketBits.Read(packetStart, bits) is { } packet)
        {
            found(packet);
        }
        else
        {
            failed();
        }
    }
}
