using Microsoft.AspNetCore.Components;
using Tarry.Reports.Wording;
using Tarry.Rig.Runs;
using Tarry.Studies.Sessions;

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
        ? $"{Numbers.Fixed(fit.RateErrorPpm, Decimals(fit), withPlus: true)} \u00B1 {Numbers.Fixed(2 * fit.StandardUncertaintyPpm, Decimals(fit))} ppm"
        : "not fitted yet";

    private static int Decimals(ClockFitRecord fit) => Numbers.Decimals(4 * fit.StandardUncertaintyPpm);
}
