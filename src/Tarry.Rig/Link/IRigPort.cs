using Tarry.Rig.Frames;

namespace Tarry.Rig.Link;

/// <summary>A byte stream to a rig. Once dead it stays dead; open another.</summary>
public interface IRigPort : IDisposable
{
    /// <summary>Whether the line broke: an unplugged cable, a driver that failed.</summary>
    bool IsDead { get; }

    /// <summary>Waits for bytes, at most as long as given.</summary>
    /// <returns>How many came; 0 at the time-out, or when the port is dead.</returns>
    int Read(Span<byte> buffer, TimeSpan timeout);

    /// <summary>Sends bytes. What a dead port is given is lost.</summary>
    void Write(ReadOnlySpan<byte> bytes);

    /// <summary>Makes ready for echoes: what takes time the first time is done here.</summary>
    void PrepareEcho()
    {
    }

    /// <summary>
    /// Sends the echo byte, which stands outside the framing and may fall into a frame, as soon as the line has it. A port of a real
    /// line may be asked for it from any thread, whatever else is done with it; closing it is the caller's to keep apart.
    /// </summary>
    /// <returns>Whether it was taken.</returns>
    bool TryEcho()
    {
        Write([HostCommand.Echo]);
        return !IsDead;
    }
}
