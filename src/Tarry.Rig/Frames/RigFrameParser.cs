using Tarry.Studies.Trials;

namespace Tarry.Rig.Frames;

/// <summary>From one line to one typed message of the rig, by the table of <c>docs/protocol.md</c>.</summary>
public static class RigFrameParser
{
    private const int TickDigits = 12;
    private const TrialFlags KnownFlags =
        TrialFlags.Bounced | TrialFlags.LineActiveAtPress | TrialFlags.StrayEdgeBefore | TrialFlags.WaitedForHost;

    /// <summary>Checks and reads a line.</summary>
    /// <param name="line">The line without its line feed; at most its first 80 bytes.</param>
    /// <param name="length">How many bytes the line had.</param>
    public static FrameResult Parse(ReadOnlyMemory<byte> line, long length)
    {
        if (FrameCheck.Check(line.Span, length, out var body) is { } error)
        {
            return new FrameResult(line, length, null, error);
        }

        var fields = new FieldReader(body);
        RigFrame? frame = fields.Kind switch
        {
            'B' => fields.Has(7) ? Hello(fields) : null,
            'T' => fields.Has(7) ? Trial(fields) : null,
            'P' => fields.Has(7) ? Heartbeat(fields) : null,
            'K' => fields.Has(4) ? new PingReplyFrame(Boot(fields), Byte(fields), (ushort)fields.Number(4), fields.Number(TickDigits)) : null,
            'A' => fields.Has(3) ? new AckFrame(Boot(fields), Byte(fields), fields.Letter()) : null,
            'N' => fields.Has(4) ? Refusal(fields) : null,
            'D' => fields.Has(6) ? RunEnd(fields) : null,
            'S' => fields.Has(5) ? Readings(fields) : null,
            'E' => fields.Has(3) ? StreamEnd(fields) : null,
            'V' => fields.Has(4) ? new LevelFrame(Boot(fields), Byte(fields), (ushort)fields.Number(4), fields.Number(TickDigits)) : null,
            _ => null,
        };
        return fields.Error is null && frame is not null
            ? new FrameResult(line, length, frame, null)
            : new FrameResult(line, length, null, fields.Error ?? FrameError.UnknownKind);
    }

    private static ushort Boot(FieldReader fields) => (ushort)fields.Number(4);

    private static byte Byte(FieldReader fields) => (byte)fields.Number(2);

    private static HelloFrame Hello(FieldReader fields) => new(
        Boot(fields),
        Byte(fields),
        Byte(fields),
        (uint)fields.Number(8, minimum: 1),
        (byte)fields.Number(2, minimum: 1, maximum: 4 * TickDigits),
        fields.Name(),
        fields.Name());

    private static TrialFrame Trial(FieldReader fields)
    {
        var boot = Boot(fields);
        var sequence = (uint)fields.Number(8, minimum: 1);
        var press = fields.Number(TickDigits);
        var latency = (uint?)fields.NumberOrNone(8);
        var outcome = fields.OutcomeLetter() switch
        {
            'r' => Outcome.Response,
            'e' => Outcome.Early,
            _ => Outcome.Missed,
        };
        var flags = (TrialFlags)fields.Number(2, maximum: (ulong)KnownFlags);
        var edges = Byte(fields);
        fields.Require(latency is null == outcome is Outcome.Missed);
        return new TrialFrame(boot, sequence, press, latency, outcome, flags, edges);
    }

    private static HeartbeatFrame Heartbeat(FieldReader fields) => new(
        Boot(fields),
        fields.Number(TickDigits),
        (uint)fields.Number(8),
        fields.Word(("i", RigState.Idle), ("r", RigState.Running), ("w", RigState.WaitingForHost), ("s", RigState.Streaming)),
        (ushort)fields.Number(4),
        (ushort)fields.Number(4),
        (ushort)fields.Number(4));

    private static RefusalFrame Refusal(FieldReader fields) => new(
        Boot(fields),
        Byte(fields),
        fields.Letter(),
        fields.Word(
            ("range", RefusalReason.Range),
            ("key", RefusalReason.Key),
            ("state", RefusalReason.State),
            ("gone", RefusalReason.Gone),
            ("kind", RefusalReason.Kind),
            ("form", RefusalReason.Form)));

    private static ReadingsFrame Readings(FieldReader fields)
    {
        const int most = 6;
        var (boot, first, ticks, lost) = (Boot(fields), (uint)fields.Number(8, minimum: 1), fields.Number(TickDigits), (ushort)fields.Number(4));
        var pairs = fields.Numbers(3, 2 * most, StickReading.Greatest);
        StickReading[] readings = [.. Enumerable.Range(0, pairs.Count / 2).Select(index => new StickReading((ushort)pairs[2 * index], (ushort)pairs[(2 * index) + 1]))];
        return new ReadingsFrame(boot, first, ticks, lost, readings);
    }

    private static StreamEndFrame StreamEnd(FieldReader fields)
    {
        var end = new StreamEndFrame(Boot(fields), (uint)fields.Number(8), (ushort)fields.Number(4));
        fields.Require(end.Lost <= end.Total);
        return end;
    }

    private static RunEndFrame RunEnd(FieldReader fields)
    {
        var end = new RunEndFrame(
            Boot(fields),
            (uint)fields.Number(8),
            (uint)fields.Number(8),
            (uint)fields.Number(8),
            (uint)fields.Number(8),
            fields.Word(("count", RunEndReason.Count), ("stop", RunEndReason.Stop)));
        fields.Require(end.Total == (ulong)end.Responses + end.Missed + end.Early);
        return end;
    }
}
