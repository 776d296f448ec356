namespace Tarry.Imports.PacketCapture.Files;

/// <summary>What can be wrong with a capture file, or with a packet in it.</summary>
public enum CaptureDefectKind
{
    /// <summary>The file ends within its header, a block or a packet. What came before is kept.</summary>
    CutOff,

    /// <summary>The text of a recording stops making sense. What came before is kept.</summary>
    TextDamaged,

    /// <summary>A length that cannot be one, so that the next packet cannot be found. What came before is kept.</summary>
    LengthOutOfRange,

    /// <summary>The two lengths of a block differ. What came before is kept.</summary>
    LengthsDisagree,

    /// <summary>A section without the byte order magic. What came before is kept.</summary>
    ByteOrderUnknown,

    /// <summary>A version of the format that is not read.</summary>
    VersionUnknown,

    /// <summary>A packet of an interface that is not described. The packet is left out.</summary>
    InterfaceUnknown,

    /// <summary>A packet whose time is beyond what can be held, or that has none. The packet is left out.</summary>
    TimeOutOfRange,

    /// <summary>A packet whose headers are longer than it is, or do not fit together. The packet is left out.</summary>
    PacketMalformed,

    /// <summary>A packet that was not captured to its end. The packet is left out.</summary>
    PacketCutShort,

    /// <summary>Fragments that do not make a whole, or follow none. They are left out.</summary>
    FragmentsBroken,

    /// <summary>A report longer than is kept.</summary>
    ReportTooLong,
}
