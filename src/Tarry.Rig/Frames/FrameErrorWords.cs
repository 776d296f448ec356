namespace Tarry.Rig.Frames;

/// <summary>The frame errors in the words of <c>docs/protocol.md</c>.</summary>
public static class FrameErrorWords
{
    /// <summary>The words for an error, such as <c>checksum wrong</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no frame error.</exception>
    public static string InWords(this FrameError error) => error switch
    {
        FrameError.TooLong => "too long",
        FrameError.NotAscii => "not ASCII",
        FrameError.NoChecksum => "no checksum",
        FrameError.ChecksumNotHex => "checksum not hex",
        FrameError.ChecksumWrong => "checksum wrong",
        FrameError.UnknownKind => "unknown kind",
        FrameError.WrongNumberOfFields => "wrong number of fields",
        FrameError.FieldOfWrongWidth => "field of wrong width",
        FrameError.FieldNotHex => "field not hex",
        FrameError.FieldOutOfRange => "field out of range",
        FrameError.UnknownOutcome => "unknown outcome",
        _ => throw new ArgumentOutOfRangeException(nameof(error), error, "Not a frame error."),
    };
}
