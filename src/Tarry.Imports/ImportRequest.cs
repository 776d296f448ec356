using Tarry.Imports.Audio;
using Tarry.Imports.DelimitedText;
using Tarry.Imports.PacketCapture;
using Tarry.Imports.Sticks;
using Tarry.Imports.UsbWire;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;

namespace Tarry.Imports;

/// <summary>Which files are to be read, and how; of the options those of the format count, and of the text's the condition and the sitting in any format.</summary>
public sealed record ImportRequest
{
    /// <summary>The files; more than one of long-form text only.</summary>
    public required IReadOnlyList<string> Files { get; init; }

    /// <summary>Their format, one of <see cref="ImportFormat.All"/>.</summary>
    public required string Format { get; init; }

    /// <summary>How delimited text is read, and the condition and sitting of a recording.</summary>
    public DelimitedTextOptions Text { get; init; } = new();

    /// <summary>How the recording of a logic analyser is read.</summary>
    public ValueChangeDumpOptions Logic { get; init; } = new();

    /// <summary>The data lines of a USB cable in the recording of a logic analyser; null where presses and responses are taken.</summary>
    public UsbCable? Cable { get; init; }

    /// <summary>How a sound recording is read.</summary>
    public TwoChannelOptions Sound { get; init; } = new();

    /// <summary>How the brightness of a video is read; null where its capture rate is not known.</summary>
    public VideoOptions? Video { get; init; }

    /// <summary>What is taken from a packet capture.</summary>
    public PacketCaptureOptions Capture { get; init; } = new();

    /// <summary>Presses of a rig beside a packet capture: a session of the study, as <c>sitting.condition</c>, or a long-form file; null for none.</summary>
    public string? Presses { get; init; }

    /// <summary>How the positions of a stick are read; null where presses, responses or reports are taken.</summary>
    public StickReading? Stick { get; init; }
}
