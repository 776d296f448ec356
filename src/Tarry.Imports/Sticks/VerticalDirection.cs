namespace Tarry.Imports.Sticks;

/// <summary>Which way a stick's y grows in a file. Sessions have it up.</summary>
public enum VerticalDirection
{
    /// <summary>Pushed away from the player is greater.</summary>
    Up,

    /// <summary>Pulled towards the player is greater, as in HID reports (HID Usage Tables, Generic Desktop page: Y grows from far to near).</summary>
    Down,
}
