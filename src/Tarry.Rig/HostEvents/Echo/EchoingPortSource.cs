using Tarry.Rig.Link;

namespace Tarry.Rig.HostEvents.Echo;

/// <summary>Ports to one rig that an echo writes to as well, whichever of them is open.</summary>
/// <param name="inner">The ports.</param>
/// <param name="echo">The echo; it has to be begun by who made it.</param>
public sealed class EchoingPortSource(IRigPortSource inner, HostEcho echo) : IRigPortSource
{
    /// <inheritdoc/>
    public string Name => inner.Name;

    /// <inheritdoc/>
    public TimeProvider Time => inner.Time;

    /// <inheritdoc/>
    public IRigPort Open()
    {
        var port = new EchoingRigPort(inner.Open(), echo, inner.Time);
        echo.Attach(port);
        return port;
    }

    /// <inheritdoc/>
    public void Pause(TimeSpan time, CancellationToken cancellation) => inner.Pause(time, cancellation);
}
