namespace Tarry.Rig.Link;

/// <summary>Where ports to one rig come from: opened once at the start of a run and again after an unplug.</summary>
public interface IRigPortSource
{
    /// <summary>The port's name for people.</summary>
    string Name { get; }

    /// <summary>The clock that the port's reads wait on: the machine's, or a simulated bench's.</summary>
    TimeProvider Time { get; }

    /// <summary>Opens the port.</summary>
    /// <exception cref="RigException">It cannot be opened now.</exception>
    IRigPort Open();

    /// <summary>Lets time pass while there is no port; returns early when cancelled.</summary>
    void Pause(TimeSpan time, CancellationToken cancellation);
}
