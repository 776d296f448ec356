using System.IO.Ports;
using System.Runtime.CompilerServices;
using Tarry.Rig.Frames;
using Tarry.Rig.HostEvents.Linux;

namespace Tarry.Rig.Link;

/// <summary>A rig on a serial port: 250,000 baud, 8 data bits, no parity, 1 stop bit, no flow control.</summary>
/// <remarks>
/// After an unplug <see cref="SerialPort"/> says that it is open, a write blocks and then closing hangs. So the first
/// exception marks the port dead, nothing is written to a dead port, and closing has a time limit.
/// <para>It hands bytes to a thread of its own to be written. An echo must not wait for that: on Linux it has a second descriptor of the same line,
/// opened before <see cref="SerialPort"/> shuts it to others, and is one system call.</para>
/// </remarks>
public sealed class SerialRigPort : IRigPort
{
    private const int BaudRate = 250_000;
    private static readonly TimeSpan CloseLimit = TimeSpan.FromSeconds(1);
    private readonly SerialPort port;
    private readonly byte[] received = new byte[4096];
    private readonly DeviceFile? echoLine;
    private readonly Lock writing = new();

    private SerialRigPort(SerialPort port, DeviceFile? echoLine)
    {
        this.port = port;
        this.echoLine = echoLine;
    }

    /// <inheritdoc/>
    public bool IsDead { get; private set; }

    /// <summary>Opens a port by its name, such as <c>/dev/ttyACM0</c> or <c>COM3</c>.</summary>
    /// <param name="name">The name.</param>
    /// <param name="forEcho">Whether echoes will be sent, as soon as the system can.</param>
    /// <exception cref="RigException">There is no such port, it is in use, or it may not be opened.</exception>
    public static SerialRigPort Open(string name, bool forEcho = false)
    {
        var port = new SerialPort(name, BaudRate, Parity.None, 8, StopBits.One)
        {
            Handshake = Handshake.None,
            DtrEnable = false,
            RtsEnable = false,
            WriteTimeout = 500,
        };
        var echoLine = forEcho && OperatingSystem.IsLinux() ? DeviceFile.TryOpen(name, Libc.WriteOnly | Libc.NoControllingTerminal, out _) : null;
        try
        {
            port.Open();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException)
        {
            port.Dispose();
            echoLine?.Dispose();
            throw new RigException(
                $"The port {name} cannot be opened: {e.Message}",
                e is UnauthorizedAccessException
                    ? "Close the program that uses it; on Linux add yourself to the group that owns the port (often dialout) and log in again."
                    : "Check the cable and the name; 'tarry rig ports' lists the ports there are.",
                e);
        }

        TrySetDataTerminalReady(port);
        TryDropWhatIsOld(port);
        return new SerialRigPort(port, echoLine);
    }

    /// <summary>The names of the serial ports of this machine, sorted.</summary>
    public static IReadOnlyList<string> List() => [.. SerialPort.GetPortNames().Distinct().Order(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public int Read(Span<byte> buffer, TimeSpan timeout)
    {
        if (IsDead)
        {
            return 0;
        }

        try
        {
            port.ReadTimeout = Math.Max(1, (int)timeout.TotalMilliseconds);
            var count = port.Read(received, 0, Math.Min(buffer.Length, received.Length));
            received.AsSpan(0, count).CopyTo(buffer);
            return count;
        }
        catch (TimeoutException)
        {
            return 0;
        }
        catch (Exception e) when (IsLineFailure(e))
        {
            IsDead = true;
            return 0;
        }
    }

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        if (IsDead)
        {
            return;
        }

        try
        {
            lock (writing)
            {
                port.Write(bytes.ToArray(), 0, bytes.Length);
            }
        }
        catch (TimeoutException)
        {
            IsDead = true;
        }
        catch (Exception e) when (IsLineFailure(e))
        {
            IsDead = true;
        }
    }

    /// <inheritdoc/>
    public void PrepareEcho()
    {
        echoLine?.Write([]);
        RuntimeHelpers.PrepareMethod(typeof(SerialRigPort).GetMethod(nameof(TryEcho))!.MethodHandle);
    }

    /// <inheritdoc/>
    public bool TryEcho()
    {
        if (echoLine is not null && !IsDead)
        {
            return echoLine.Write([HostCommand.Echo]);
        }

        Write([HostCommand.Echo]);
        return !IsDead;
    }

    /// <summary>Closes the port; gives up waiting for the driver after a second.</summary>
    public void Dispose()
    {
        IsDead = true;
        echoLine?.Dispose();
        var closing = Task.Run(port.Dispose);
        try
        {
            closing.Wait(CloseLimit);
        }
        catch (AggregateException)
        {
            // The line is gone, and there is nobody left to tell.
        }
    }

    /// <summary>A board with native USB sends only to a ready terminal; a pseudo-terminal refuses the setting, and needs none.</summary>
    private static void TrySetDataTerminalReady(SerialPort port)
    {
        try
        {
            port.DtrEnable = true;
        }
        catch (IOException)
        {
        }
    }

    /// <summary>What the rig said to an earlier program is no answer to this one; the rig sends again what is asked for.</summary>
    private static void TryDropWhatIsOld(SerialPort port)
    {
        try
        {
            port.DiscardInBuffer();
        }
        catch (IOException)
        {
        }
    }

    private static bool IsLineFailure(Exception e) =>
        e is IOException or InvalidOperationException or UnauthorizedAccessException or OperationCanceledException;
}
