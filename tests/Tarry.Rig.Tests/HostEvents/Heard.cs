using Tarry.Rig.HostEvents;

namespace Tarry.Rig.Tests.HostEvents;

/// <summary>Reports as they were handed on, copied.</summary>
internal sealed class Heard
{
    public List<(long Stamp, InputEvent[] Events, byte[] Bytes, bool FollowsALoss)> Reports { get; } = [];

    public void Take(InputReport report) =>
        Reports.Add((report.StampNanoseconds, report.Events.ToArray(), report.Bytes.ToArray(), report.FollowsALoss));
}
