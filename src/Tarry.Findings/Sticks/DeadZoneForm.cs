namespace Tarry.Findings.Sticks;

/// <summary>In what form a dead zone was found.</summary>
public enum DeadZoneForm
{
    /// <summary>There is none, or no turn along the gate tells.</summary>
    NotTold,

    /// <summary>Each axis by itself: a turn sticks to the axes where it crosses them.</summary>
    Axial,

    /// <summary>By distance from the centre: a turn along the gate does not notice it.</summary>
    Radial,
}
