using System.Runtime.InteropServices;

namespace Tarry.Rig.HostEvents.Windows;

/// <summary>What Raw Input needs of <c>user32.dll</c>, as <c>winuser.h</c> declares it.</summary>
internal static class User32
{
    public const uint InputSink = 0x100;
    public const uint RawInputData = 0x10000003;
    public const uint DeviceName = 0x20000007;
    public const uint DeviceInfo = 0x2000000b;
    public const uint WmInput = 0x00ff;
    public const uint AllInput = 0x04ff;
    public const uint Remove = 1;
    public static readonly nint MessageOnly = -3;

    private const string Library = "user32.dll";

    [StructLayout(LayoutKind.Sequential)]
    public struct RawInputDeviceListEntry
    {
        public nint Device;
        public uint Kind;
    }

    [StructLayout(LayoutKind.Sequential)]
    public struct RawInputRegistration
    {
        public ushort UsagePage;
        public ushort Usage;
        public uint Flags;
        public nint Target;
    }

    [StructLayout(LayoutKind.Sequential)]
    public struct Message
    {
        public nint Window;
        public uint Number;
        public nuint WParam;
        public nint LParam;
        public uint Time;
        public int X;
        public int Y;
        public uint Private;
    }

    [DllImport(Library, SetLastError = true)]
    public static extern uint GetRawInputDeviceList([Out] RawInputDeviceListEntry[]? devices, ref uint count, uint size);

    [DllImport(Library, EntryPoint = "GetRawInputDeviceInfoW", SetLastError = true)]
    public static extern uint GetRawInputDeviceInfo(nint device, uint command, [Out] byte[]? data, ref uint size);

    [DllImport(Library, SetLastError = true)]
    public static extern int RegisterRawInputDevices(RawInputRegistration[] devices, uint count, uint size);

    [DllImport(Library, SetLastError = true)]
    public static extern uint GetRawInputData(nint input, uint command, ref byte data, ref uint size, uint headerSize);

    [DllImport(Library, EntryPoint = "GetRawInputData", SetLastError = true)]
    public static extern uint GetRawInputDataSize(nint input, uint command, nint none, ref uint size, uint headerSize);

    [DllImport(Library, EntryPoint = "CreateWindowExW", CharSet = CharSet.Unicode, SetLastError = true)]
    public static extern nint CreateWindow(
        uint extendedStyle, string className, string? windowName, uint style, int x, int y, int width, int height, nint parent, nint menu, nint instance, nint parameter);

    [DllImport(Library, SetLastError = true)]
    public static extern int DestroyWindow(nint window);

    [DllImport(Library, EntryPoint = "PeekMessageW")]
    public static extern int PeekMessage(out Message message, nint window, uint first, uint last, uint remove);

    [DllImport(Library, EntryPoint = "DispatchMessageW")]
    public static extern nint DispatchMessage(ref Message message);

    [DllImport(Library, SetLastError = true)]
    public static extern uint MsgWaitForMultipleObjectsEx(uint count, nint handles, uint milliseconds, uint wakeMask, uint flags);
}
