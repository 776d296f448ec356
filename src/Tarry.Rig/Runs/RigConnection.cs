using System.Globalization;
using Tarry.Rig.Frames;
using Tarry.Rig.Link;

namespace Tarry.Rig.Runs;

/// <summary>The way to one rig through a run: opened once, and again whenever it is lost.</summary>
internal sealed class RigConnection(IRigPortSource source, Action<FrameResult> onBadFrame) : IDisposable
{
    private const byte ProtocolVersion = 1;
    private static readonly TimeSpan GreetLimit = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan BetweenAttempts = TimeSpan.FromMilliseconds(250);
    private RigLink? link;
    private int repeatedBefore;

    /// <summary>The present link.</summary>
    public RigLink Link => link ?? throw new InvalidOperationException("The port is not open.");

    /// <summary>Who the rig is.</summary>
    public HelloFrame Rig => Link.Rig ?? throw new InvalidOperationException("The rig has not said who it is.");

    /// <summary>Who the rig is, or null where there is no link that knows.</summary>
    public HelloFrame? RigIfKnown => link?.Rig;

    /// <summary>Commands repeated over all links.</summary>
    public int RepeatedCommands => repeatedBefore + (link?.RepeatedCommands ?? 0);

    /// <summary>Opens the port and greets the rig.</summary>
    /// <returns>False if cancelled.</returns>
    /// <exception cref="RigException">The port cannot be opened, or no rig answers.</exception>
    public bool Open(CancellationToken cancellation)
    {
        Close();
        link = new RigLink(source.Open(), source.Time, onBadFrame);
        if (Greet(cancellation))
        {
            return true;
        }

        Close();
        return cancellation.IsCancellationRequested
            ? false
            : throw new RigException(
                $"No rig answers on {source.Name}.",
                "Check that it is the right port ('tarry rig ports') and that the board has the rig's firmware.");
    }

    /// <summary>Asks the rig on the open port who it is, as after its restart.</summary>
    /// <exception cref="RigException">It speaks another version of the protocol.</exception>
    public bool Greet(CancellationToken cancellation)
    {
        var rig = Link.Greet(GreetLimit, cancellation);
        return rig is null or { Protocol: ProtocolVersion }
            ? rig is not null
            : throw new RigException(
                string.Create(CultureInfo.InvariantCulture, $"The rig speaks version {rig.Protocol} of the protocol, this program version {ProtocolVersion}."),
                "Put the firmware that came with this program on the board.");
    }

    /// <summary>Tries to open the port until a rig answers.</summary>
    /// <param name="limit">How long.</param>
    /// <param name="onAttempt">Called before each attempt.</param>
    /// <param name="cancellation">Gives up early.</param>
    /// <returns>False if cancelled.</returns>
    /// <exception cref="RigException">It did not come back in time.</exception>
    public bool Reopen(TimeSpan limit, Action onAttempt, CancellationToken cancellation)
    {
        var start = source.Time.GetTimestamp();
        while (!cancellation.IsCancellationRequested)
        {
            onAttempt();
            try
            {
                return Open(cancellation);
            }
            catch (RigException) when (source.Time.GetElapsedTime(start) < limit)
            {
                source.Pause(BetweenAttempts, cancellation);
            }
        }

        return false;
    }

    /// <summary>Stops the rig if it can still be reached.</summary>
    public void StopRig()
    {
        if (link is { State: LinkState.Alive, Rig: not null })
        {
            link.Ask(HostCommand.Stop);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Close();

    private void Close()
    {
        repeatedBefore = RepeatedCommands;
        link?.Dispose();
        link = null;
    }
}
