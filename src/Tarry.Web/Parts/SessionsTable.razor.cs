using Microsoft.AspNetCore.Components;
using Tarry.Findings.Conditions;
using Tarry.Metrology;
using Tarry.Reports.Wording;

namespace Tarry.Web.Parts;

/// <summary>The sessions of a condition: their counts, their means and what the order of their trials shows.</summary>
public sealed partial class SessionsTable
{
    /// <summary>The condition.</summary>
    [Parameter]
    [EditorRequired]
    public required ConditionFinding Condition { get; set; }

    /// <summary>The address at which the session of a sitting is set aside on trial.</summary>
    [Parameter]
    [EditorRequired]
    public required Func<string, string> Aside { get; set; }

    private static (string Text, string Bounds) Mean(SessionFinding session) => session.Mean is Estimate<Latency> mean
        ? (EstimateWording.Value(mean, Quantity.Latency), EstimateWording.Bounds(mean, Quantity.Latency))
        : (session.Counts.Used == 0 ? "nothing used" : "not enough data", "");
}
