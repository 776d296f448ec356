namespace Tarry.Rig.Link;

/// <summary>A serial port by its name, on the machine's clock.</summary>
/// <param name="name">The port's name, such as <c>/dev/ttyACM0</c> or <c>COM3</c>.</param>
/// <param name="forEcho">Whether echoes will be sent.</param>
public sealed class SerialRigPortSource(string name, bool forEcho = false) : IRigPortSource
{
    /// <inheritdoc/>
    public string Name => name;

    /// <inheritdoc/>
    public TimeProvider Time => TimeProvider.System;

    /// <inheritdoc/>
    public IRigPort Open() => SerialRigPort.Open(name, forEcho);

    /// <inheritdoc/>
    public void Pause(TimeSpan time, CancellationToken cancellation) => cancellation.WaitHandle.WaitOne(time);
}
