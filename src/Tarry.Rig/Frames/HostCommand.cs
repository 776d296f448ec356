using System.Globalization;

namespace Tarry.Rig.Frames;

/// <summary>A command of the host, ready for its number. <see cref="Acknowledge"/> alone has none, for it is never answered.</summary>
public sealed record HostCommand
{
    /// <summary>The echo: one byte that stands outside the framing.</summary>
    public const byte Echo = 0x06;

    private HostCommand(char kind, string fields)
    {
        Kind = kind;
        Fields = fields;
    }

    /// <summary>The kind: one small letter.</summary>
    public char Kind { get; }

    /// <summary>The fields after the number, each with its leading space.</summary>
    public string Fields { get; }

    /// <summary><c>h</c>: who is there?</summary>
    public static HostCommand Hello { get; } = new('h', "");

    /// <summary><c>g</c>: begin the run.</summary>
    public static HostCommand Go { get; } = new('g', "");

    /// <summary><c>s</c>: begin a stream of readings.</summary>
    public static HostCommand Stream { get; } = new('s', "");

    /// <summary><c>x</c>: stop after the trial in flight, or end the stream.</summary>
    public static HostCommand Stop { get; } = new('x', "");

    /// <summary><c>c</c>: set a parameter.</summary>
    public static HostCommand Set(RigParameter parameter, uint value)
    {
        ArgumentNullException.ThrowIfNull(parameter);
        return new HostCommand('c', Text($" {parameter.Key} {value:x8}"));
    }

    /// <summary><c>p</c>: a ping for the clock fit.</summary>
    public static HostCommand Ping(ushort id) => new('p', Text($" {id:x4}"));

    /// <summary><c>v</c>: put the converter at a level, in 1/65535 of its reference.</summary>
    public static HostCommand Level(ushort level) => new('v', Text($" {level:x4}"));

    /// <summary><c>r</c>: send trials again.</summary>
    /// <param name="from">The first of them.</param>
    /// <param name="count">How many.</param>
    public static HostCommand Resend(uint from, byte count) => new('r', Text($" {from:x8} {count:x2}"));

    /// <summary>The bytes of the command under a number, checksum and line feed included.</summary>
    public byte[] Encode(byte number) => FrameCheck.Seal(Text($"{Kind} {number:x2}{Fields}"));

    /// <summary>The bytes of <c>k</c>: all trials up to this one are safe on the disk.</summary>
    public static byte[] Acknowledge(uint sequence) => FrameCheck.Seal(Text($"k {sequence:x8}"));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
