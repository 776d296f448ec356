namespace Tarry.Rig.HostEvents.Linux;

/// <summary>Request numbers of evdev and hidraw, composed as <c>asm-generic/ioctl.h</c> does (x86, ARM, RISC-V): direction, size, letter, number.</summary>
internal static class IoctlRequest
{
    private const uint Out = 1;
    private const uint In = 2;

    /// <summary>EVIOCGRAB: keep the events from all others.</summary>
    public static uint Grab { get; } = Compose(Out, 'E', 0x90, sizeof(int));

    /// <summary>EVIOCSCLOCKID: which clock stamps the events.</summary>
    public static uint SetClock { get; } = Compose(Out, 'E', 0xa0, sizeof(int));

    /// <summary>EVIOCGID: bus, vendor, product, version.</summary>
    public static uint Identity { get; } = Compose(In, 'E', 0x02, 8);

    /// <summary>HIDIOCGRDESCSIZE: length of the report descriptor.</summary>
    public static uint HidDescriptorSize { get; } = Compose(In, 'H', 0x01, sizeof(int));

    /// <summary>HIDIOCGRDESC: the report descriptor, behind its length.</summary>
    public static uint HidDescriptor { get; } = Compose(In, 'H', 0x02, sizeof(int) + 4096);

    /// <summary>HIDIOCGRAWINFO: bus, vendor, product.</summary>
    public static uint HidIdentity { get; } = Compose(In, 'H', 0x03, 8);

    /// <summary>EVIOCGNAME.</summary>
    public static uint Name(int length) => Compose(In, 'E', 0x06, length);

    /// <summary>EVIOCGKEY: which keys are down.</summary>
    public static uint KeyState(int length) => Compose(In, 'E', 0x18, length);

    /// <summary>EVIOCGBIT: which codes of a type the device has.</summary>
    public static uint Codes(ushort type, int length) => Compose(In, 'E', 0x20 + (uint)type, length);

    /// <summary>EVIOCGABS: an axis.</summary>
    public static uint Axis(ushort code) => Compose(In, 'E', 0x40 + (uint)code, 24);

    /// <summary>HIDIOCGRAWNAME.</summary>
    public static uint HidName(int length) => Compose(In, 'H', 0x04, length);

    private static uint Compose(uint direction, char letter, uint number, int size) =>
        (direction << 30) | ((uint)size << 16) | ((uint)letter << 8) | number;
}
