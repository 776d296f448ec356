namespace Tarry.Rig.HostEvents;

/// <summary>A system whose input devices are not read yet.</summary>
internal sealed class AbsentInputSystem : IHostInputSystem
{
    private const string Remedy = "Use Linux or Windows for the host's own events; everything else works here, and a light sensor or an edge needs none of them.";

    public IReadOnlyList<HostInputDescription> List() => throw NotYet();

    public IHostInputDevice Open(string path, bool exclusive) => throw NotYet();

    public IEnumerable<HostInputStep> Check() => [new("the host's input devices", false, $"They are not read on this system yet. {Remedy}")];

    private static HostInputException NotYet() => new("The host's input devices are not read on this system yet.", Remedy);
}
