using Microsoft.AspNetCore.Components;
using Tarry.Reports.Wording;
using Tarry.Rig.HostEvents;

namespace Tarry.Web.Bench;

/// <summary>The fields of a run.</summary>
public sealed partial class RunFields
{
    /// <summary>What is filled in.</summary>
    [Parameter]
    [EditorRequired]
    public required RunForm Form { get; set; }

    /// <summary>The ports there are.</summary>
    [Parameter]
    [EditorRequired]
    public required IReadOnlyList<string> Ports { get; set; }

    /// <summary>The input devices of this computer.</summary>
    [Parameter]
    [EditorRequired]
    public required IReadOnlyList<HostInputDescription> Devices { get; set; }

    private string Pressing => Form is { IntervalMinMs: { } min, IntervalMaxMs: { } max, HoldMs: { } hold, TimeOutMs: { } timeOut }
        ? $"every {Numbers.Plain(min)} to {Numbers.Milliseconds(max)}, held {Numbers.Milliseconds(hold)}, missed after {Numbers.Milliseconds(timeOut)}"
        : "something is missing";
}
