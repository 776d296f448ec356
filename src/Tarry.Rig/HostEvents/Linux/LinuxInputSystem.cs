using System.Globalization;

namespace Tarry.Rig.HostEvents.Linux;

/// <summary>Linux: evdev devices, <c>event*</c>, and hidraw devices, <c>hidraw*</c>.</summary>
internal sealed class LinuxInputSystem(string eventFolder, string rawFolder) : IHostInputSystem
{
    private const string Permission =
        "Add yourself to the group that owns it (often 'input') and log in again, or let a udev rule give you this one device, such as KERNEL==\"event*\", "
        + "ATTRS{idVendor}==\"1209\", TAG+=\"uaccess\". Caution: who may read input devices can read every keyboard among them, passwords too; "
        + "a rule for the one device is the smaller door.";

    public IReadOnlyList<HostInputDescription> List() => [.. Paths().Select(Describe)];

    public IHostInputDevice Open(string path, bool exclusive)
    {
        ArgumentNullException.ThrowIfNull(path);
        var file = DeviceFile.TryOpen(path, Libc.ReadOnly, out var error)
            ?? throw new HostInputException(Refusal(path, error), Remedy(error));
        try
        {
            IHostInputDevice device = IsRaw(path)
                ? new HidrawDevice(file, path, TimeProvider.System)
                : new EvdevDevice(file, path, exclusive);
            return IsRaw(path) || device.Description is { Buttons.Count: > 0 } or { Axes.Count: > 0 } or { IsRelative: true }
                ? device
                : throw new HostInputException($"{path} is no input device with buttons or axes.", "'tarry host devices' lists those there are.");
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    public IEnumerable<HostInputStep> Check()
    {
        var paths = Paths().ToList();
        yield return new HostInputStep($"list {eventFolder} and {rawFolder}", paths.Count > 0, $"{paths.Count.ToString(CultureInfo.InvariantCulture)} devices");
        foreach (var path in paths)
        {
            string found;
            var worked = true;
            try
            {
                using var device = Open(path, exclusive: false);
                found = $"{device.Description.Name}; stamps: {device.Clock.InWords()}";
            }
            catch (HostInputException exception)
            {
                (worked, found) = (false, exception.Message);
            }

            yield return new HostInputStep($"open {path}", worked, found);
        }

        var real = RealTimePriority.IsAllowed();
        yield return new HostInputStep("run a thread in real time", real, real ? "allowed" : "not allowed; an echo works without it, with more scatter");
    }

    private IEnumerable<string> Paths() => Numbered(eventFolder, "event").Concat(Numbered(rawFolder, "hidraw"));

    private static IEnumerable<string> Numbered(string folder, string prefix) => Directory.Exists(folder)
        ? Directory.EnumerateFileSystemEntries(folder, prefix + "*")
            .Select(path => (Path: path, Number: int.TryParse(Path.GetFileName(path)[prefix.Length..], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : -1))
            .Where(entry => entry.Number >= 0)
            .OrderBy(entry => entry.Number)
            .Select(entry => entry.Path)
        : [];

    private static HostInputDescription Describe(string path)
    {
        using var file = DeviceFile.TryOpen(path, Libc.ReadOnly, out var error);
        return file is null ? new HostInputDescription { Path = path, Name = NameWithoutOpening(path), Obstacle = $"{Refusal(path, error)} {Remedy(error)}" }
            : IsRaw(path) ? HidrawDevice.Describe(file, path)
            : EvdevDescription.Read(file, path);
    }

    private static bool IsRaw(string path) => Path.GetFileName(path).StartsWith("hidraw", StringComparison.Ordinal);

    private static string NameWithoutOpening(string path)
    {
        var name = $"/sys/class/input/{Path.GetFileName(path)}/device/name";
        return File.Exists(name) ? File.ReadAllText(name).Trim() : "(unknown)";
    }

    private static string Refusal(string path, int error) => error switch
    {
        Libc.AccessDenied or Libc.NotPermitted => $"{path} may not be read by you.",
        _ => string.Create(CultureInfo.InvariantCulture, $"{path} cannot be opened (error {error})."),
    };

    private static string Remedy(int error) => error is Libc.AccessDenied or Libc.NotPermitted
        ? Permission
        : "'tarry host devices' lists the devices there are; plug it in, or give another path.";
}
