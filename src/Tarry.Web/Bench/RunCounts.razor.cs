using System.Globalization;
using Microsoft.AspNetCore.Components;
using Tarry.Reports.Wording;
using Tarry.Rig.Runs;

namespace Tarry.Web.Bench;

/// <summary>The counts of a run and the health of its rig.</summary>
public sealed partial class RunCounts
{
    /// <summary>The run.</summary>
    [Parameter]
    [EditorRequired]
    public required RunView Of { get; set; }

    /// <summary>Where its capture stands.</summary>
    [Parameter]
    [EditorRequired]
    public required RunProgress Progress { get; set; }

    private RigHealth Health => Progress.Health;

    private string Clock => Health.Clock is { } fit
        ? string.Create(CultureInfo.InvariantCulture, $"{Numbers.Fixed(fit.RateErrorPpm, 1, withPlus: true)} \u00B1 {2 * fit.StandardUncertaintyPpm:0.0} ppm")
        : "fitted after 30 s";
}
