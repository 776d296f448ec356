namespace Tarry.Rig.HostEvents;

/// <summary>Where an operating system keeps its input devices.</summary>
public interface IHostInputSystem
{
    /// <summary>The devices there are, those that may not be opened too, in order of their paths.</summary>
    IReadOnlyList<HostInputDescription> List();

    /// <summary>Opens a device by its path.</summary>
    /// <param name="path">As <see cref="List"/> has it.</param>
    /// <param name="exclusive">Keeps its events from all other programs while it is open, where the system can.</param>
    /// <exception cref="HostInputException">There is no such device, or it cannot be opened.</exception>
    IHostInputDevice Open(string path, bool exclusive);

    /// <summary>Does step by step what listing and reading take, and says of each step how it went.</summary>
    IEnumerable<HostInputStep> Check();
}
