namespace Tarry.Rig.Frames;

/// <summary>The one reader of the rig's line: bytes in, in pieces of any size; checked frames and named errors out.</summary>
/// <remarks>Holds at most one line of 80 bytes, however many bytes come without a line feed. An empty line is ignored.</remarks>
public sealed class FrameReader
{
    private readonly LineReader lines = new();

    /// <summary>Takes bytes in and gives what each finished line came to, in order.</summary>
    public void Push(ReadOnlySpan<byte> bytes, Action<FrameResult> onResult)
    {
        ArgumentNullException.ThrowIfNull(onResult);
        lines.Push(bytes, (line, length) => onResult(RigFrameParser.Parse(line, length)));
    }
}
