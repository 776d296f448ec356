namespace Tarry.Rig.Frames;

/// <summary>Every way in which a frame can be bad, by the names of <c>docs/protocol.md</c>.</summary>
public enum FrameError
{
    /// <summary>More than 80 bytes before the line feed.</summary>
    TooLong,

    /// <summary>A byte outside 0x20-0x7e.</summary>
    NotAscii,

    /// <summary>No <c>*</c> that ends the body.</summary>
    NoChecksum,

    /// <summary>What follows the <c>*</c> is not four lower-case hex digits.</summary>
    ChecksumNotHex,

    /// <summary>The checksum is not that of the body.</summary>
    ChecksumWrong,

    /// <summary>The kind is none that the other side sends.</summary>
    UnknownKind,

    /// <summary>More or fewer fields than the kind has.</summary>
    WrongNumberOfFields,

    /// <summary>A field is longer or shorter than the kind says.</summary>
    FieldOfWrongWidth,

    /// <summary>A digit of a number is not lower-case hex.</summary>
    FieldNotHex,

    /// <summary>A field has a value that cannot be, alone or beside the other fields.</summary>
    FieldOutOfRange,

    /// <summary>The outcome of a trial is none of the known letters.</summary>
    UnknownOutcome,
}
