namespace Tarry.Imports.Tests.PacketCapture;

/// <summary>Report descriptors of published examples, and one gamepad.</summary>
internal static class SampleDescriptors
{
    /// <summary>HID 1.11, appendix E.6, as chromium's hid_report_descriptor_unittest.cc (kKeyboard) has it.</summary>
    public static readonly byte[] Keyboard = Convert.FromHexString(
        "05010906a101050719e029e71500250175019508810295017508810195057501050819012905910295017503910195067508150025650507190029658100c0");

    /// <summary>HID 1.11, appendix E.10, from the same source (kMouse).</summary>
    public static readonly byte[] Mouse = Convert.FromHexString(
        "05010902a1010901a1000509190129031500250195037501810295017505810105010930093115" + "81257f750895028106c0c0");

    /// <summary>Report id 1: X Y Rx Ry of 16 bits, a hat of 4 bits with null state, 12 buttons.</summary>
    public static readonly byte[] Gamepad = Convert.FromHexString(
        "05010905a1018501093009311601" + "8026ff7f7510950281020933093481020939150025073500463b0165147504950181426500350045000509190129" + "0c15002501750195" + "0c8102c0");

    /// <summary>A device descriptor: USB 2.0, control packets of so many bytes, vendor 0x1209, product as given.</summary>
    public static byte[] Device(int controlPacket, int product) =>
        [18, 1, 0, 2, 0, 0, 0, (byte)controlPacket, 0x09, 0x12, (byte)product, (byte)(product >> 8), 0, 1, 0, 0, 0, 1];

    /// <summary>A configuration with one HID interface and one interrupt IN endpoint.</summary>
    public static byte[] Configuration(int descriptorLength, int endpoint, int maxPacket, int interval) =>
    [
        9, 2, 34, 0, 1, 1, 0, 0x80, 50,
        9, 4, 0, 0, 1, 3, 0, 0, 0,
        9, 0x21, 0x11, 1, 0, 1, 0x22, (byte)descriptorLength, (byte)(descriptorLength >> 8),
        7, 5, (byte)endpoint, 3, (byte)maxPacket, (byte)(maxPacket >> 8), (byte)interval,
    ];
}
