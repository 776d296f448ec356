namespace Tarry.Rig.HostEvents.Linux;

/// <summary>An evdev device: changes with the kernel's stamps.</summary>
internal sealed class EvdevDevice : IHostInputDevice
{
    private const int Monotonic = 1;
    private const int EventsARead = 64;
    private readonly DeviceFile file;
    private readonly EvdevFraming framing;
    private readonly byte[] buffer = new byte[EventsARead * EvdevFraming.NativeEventSize];

    public EvdevDevice(DeviceFile file, string path, bool exclusive)
    {
        this.file = file;
        Description = EvdevDescription.Read(file, path);
        var clock = BitConverter.GetBytes(Monotonic);
        Clock = file.Ask(IoctlRequest.SetClock, clock) >= 0 ? InputClock.KernelMonotonic : InputClock.KernelRealtime;
        framing = new EvdevFraming(EvdevFraming.NativeEventSize, events => EvdevDescription.ReadState(file, Description, events));
        if (exclusive && !file.Tell(IoctlRequest.Grab, 1))
        {
            throw new HostInputException($"{path} cannot be taken for this program alone.", "Another program holds it; close that, or go on without --exclusive.");
        }
    }

    public HostInputDescription Description { get; }

    public InputClock Clock { get; }

    public long Losses => framing.Losses;

    public bool Read(TimeSpan timeout, InputReportHandler onReport)
    {
        file.Wait(timeout);
        var count = file.Read(buffer);
        if (count > 0)
        {
            framing.Push(buffer.AsSpan(0, count), onReport);
        }

        return count >= 0;
    }

    public void Dispose() => file.Dispose();
}
