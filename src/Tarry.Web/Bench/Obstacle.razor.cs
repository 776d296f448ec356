using Microsoft.AspNetCore.Components;
using Tarry.Imports;
using Tarry.Rig;
using Tarry.Rig.HostEvents;
using Tarry.Rig.Runs;
using Tarry.Studies;

namespace Tarry.Web.Bench;

/// <summary>Why something cannot be done.</summary>
public sealed partial class Obstacle
{
    /// <summary>The error.</summary>
    [Parameter]
    [EditorRequired]
    public required Exception Of { get; set; }

    private string? Remedy => Of switch
    {
        StudyException study => study.Remedy,
        RigException rig => rig.Remedy,
        RunSettingsException settings => settings.Remedy,
        HostInputException input => input.Remedy,
        ImportException import => import.Remedy,
        _ => null,
    };

    /// <summary>Whether an error is one that a user can do something about.</summary>
    internal static bool Is(Exception exception) =>
        exception is StudyException or RigException or RunSettingsException or HostInputException or ImportException;
}
