namespace Tarry.Findings.Sticks.Measures;

/// <summary>Of which part of a stick a measure is.</summary>
public enum StickPart
{
    /// <summary>The stick as a whole.</summary>
    Whole,

    /// <summary>The x axis.</summary>
    X,

    /// <summary>The y axis.</summary>
    Y,

    /// <summary>To the right.</summary>
    Right,

    /// <summary>Up and to the right, at 45 degrees.</summary>
    UpRight,

    /// <summary>Up.</summary>
    Up,

    /// <summary>Up and to the left.</summary>
    UpLeft,

    /// <summary>To the left.</summary>
    Left,

    /// <summary>Down and to the left.</summary>
    DownLeft,

    /// <summary>Down.</summary>
    Down,

    /// <summary>Down and to the right.</summary>
    DownRight,
}
