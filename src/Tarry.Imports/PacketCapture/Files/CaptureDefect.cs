using static System.FormattableString;

namespace Tarry.Imports.PacketCapture.Files;

/// <summary>Something that is wrong with a capture file.</summary>
/// <param name="Kind">What.</param>
/// <param name="Offset">At which byte of the file the block or packet begins.</param>
/// <param name="Message">What, in words.</param>
public sealed record CaptureDefect(CaptureDefectKind Kind, long Offset, string Message)
{
    /// <summary>The message with its place.</summary>
    public override string ToString() => Invariant($"byte {Offset}: {Message}");
}
