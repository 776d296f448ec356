namespace Tarry.Rig.HostEvents;

/// <summary>What a device told at one instant. Valid only while the handler runs: nothing is copied, so that an echo waits for no allocation.</summary>
public readonly ref struct InputReport
{
    /// <summary>When, in nanoseconds of the device's <see cref="IHostInputDevice.Clock"/>.</summary>
    public required long StampNanoseconds { get; init; }

    /// <summary>What changed; empty where the system gives the report's bytes only.</summary>
    public ReadOnlySpan<InputEvent> Events { get; init; }

    /// <summary>The report as the device sent it; empty where the system gives changes only.</summary>
    public ReadOnlySpan<byte> Bytes { get; init; }

    /// <summary>The system lost reports before this one, and this one says how things stand, not when they came about.</summary>
    public bool FollowsALoss { get; init; }
}
