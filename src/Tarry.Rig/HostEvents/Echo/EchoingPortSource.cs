using Tarry.Rig.Link;

namespace Tarry.Rig.HostEvents.Echo;

/// <summary>Ports to one rig that an echo writes to as well, whichever of them is open.</summary>
internal sealed class EchoingPortSource(IRigPortSource inner, HostEcho echo) : IRigPortSource
{
    public string Name => inner.Name;

    public TimeProvider Time => inner.Time;

    public IRigPort Open()
    {
        var port = new EchoingRigPort(inner.Open(), echo, inner.Time);
        echo.Attach(port);
        return port;
    }

    public void Pause(TimeSpan time, CancellationToken cancellation) => inner.Pause(time, cancellation);
}
