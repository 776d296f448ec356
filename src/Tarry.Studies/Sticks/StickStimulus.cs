namespace Tarry.Studies.Sticks;

/// <summary>What is known of the true position of a stick, sample by sample.</summary>
public enum StickStimulus
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The angle of the stop that the stick stands against, in degrees, counter-clockwise from right: the column <c>stimulus_deg</c>.</summary>
    Angle,

    /// <summary>The levels that stand for the wipers, as shares of the supply from 0 to 1: the columns <c>stimulus_x</c> and <c>stimulus_y</c>.</summary>
    Level,
}
