using System.Globalization;
using Tarry.Metrology;
using Tarry.Rig.Frames;
using Tarry.Studies.Sticks;

namespace Tarry.Rig.SimulatedBench.Sticks;

/// <summary>A stream of readings of a simulated rig: both wipers on a lattice of ticks, six readings a frame.</summary>
internal sealed class SimulatedStream
{
    private const int MostInFrame = 6;
    private readonly StemMotion motion;
    private readonly StickSensor sensor;
    private readonly long interval;
    private readonly double tickHz;
    private readonly long firstTick;
    private readonly Action<long, long, string, string> send;
    private readonly List<StickReading> readings = [];
    private uint number;

    /// <summary>A stream that begins.</summary>
    /// <param name="hand">The stick and what is done with it.</param>
    /// <param name="seed">Seed of its noise.</param>
    /// <param name="beginTick">When it was asked for.</param>
    /// <param name="intervalTicks">Ticks between readings.</param>
    /// <param name="tickHz">Ticks a second.</param>
    /// <param name="send">Takes the tick at which a frame is said, that of its first reading, that one's number, and the readings.</param>
    public SimulatedStream(SimulatedStickHand hand, ulong seed, long beginTick, long intervalTicks, long tickHz, Action<long, long, string, string> send)
    {
        var random = SeededGenerator.ForPart(seed, 0x5EED);
        motion = new StemMotion(hand.Stick, hand.Procedure, hand.Pace, random);
        sensor = new StickSensor(hand.Stick, random, touchesWiper: hand.Procedure == StickProcedure.Substitution);
        (interval, this.tickHz, this.send) = (intervalTicks, tickHz, send);
        NextTick = firstTick = beginTick + (tickHz / 500);
    }

    /// <summary>When the next reading is due.</summary>
    public long NextTick { get; private set; }

    /// <summary>Readings so far.</summary>
    public uint Count => number;

    /// <summary>Takes the reading that is due.</summary>
    /// <param name="tick">Now.</param>
    /// <param name="level">The converter's level in place of the wiper of x, -1 to 1; null while it was not set.</param>
    public void Read(long tick, double? level)
    {
        var stem = motion.At((NextTick - firstTick) / tickHz);
        var (x, y) = sensor.Wiper(level is { } set ? stem with { X = set } : stem);
        readings.Add(new StickReading(Count10(x), Count10(y)));
        number++;
        NextTick += interval;
        if (readings.Count == MostInFrame)
        {
            Flush(tick);
        }
    }

    /// <summary>Says what is left.</summary>
    public void Flush(long tick)
    {
        if (readings.Count > 0)
        {
            var digits = string.Concat(readings.Select(reading => string.Create(CultureInfo.InvariantCulture, $"{reading.X:x3}{reading.Y:x3}")));
            send(tick, NextTick - (readings.Count * interval), (number - readings.Count + 1).ToString("x8", CultureInfo.InvariantCulture), digits);
            readings.Clear();
        }
    }

    private static ushort Count10(double share) => (ushort)Math.Clamp(Math.Round((share + 1) / 2 * StickReading.Greatest), 0, StickReading.Greatest);
}
