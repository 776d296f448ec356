namespace Tarry.Imports.PacketCapture.Usb;

/// <summary>A transfer as the host's driver saw it: submitted, or completed.</summary>
internal readonly ref struct UsbTransfer
{
    /// <summary>What its submission and its completion share.</summary>
    public required ulong Id { get; init; }

    public required int Bus { get; init; }

    public required int Device { get; init; }

    /// <summary>The endpoint address; bit 7 is set for IN.</summary>
    public required int Endpoint { get; init; }

    public required UsbTransferType Type { get; init; }

    public required bool IsCompletion { get; init; }

    public required bool Succeeded { get; init; }

    /// <summary>The polling interval of the driver, in frames or microframes; 0 where not given.</summary>
    public int Interval { get; init; }

    /// <summary>The eight bytes of a control transfer's set-up; empty where not given.</summary>
    public ReadOnlySpan<byte> Setup { get; init; }

    public required ReadOnlySpan<byte> Data { get; init; }

    /// <summary>Whether the file holds less of the data than there was.</summary>
    public required bool CutShort { get; init; }

    public bool IsIn => (Endpoint & 0x80) != 0;
}
