namespace Tarry.Rig.Link;

/// <summary>What a link knows of its rig.</summary>
public enum LinkState
{
    /// <summary>The rig speaks.</summary>
    Alive,

    /// <summary>A frame came with another boot id: the rig restarted.</summary>
    Restarted,

    /// <summary>Nothing good was heard for three seconds.</summary>
    Silent,

    /// <summary>The rig speaks, but for fifteen seconds it answered nothing that it was asked.</summary>
    Deaf,

    /// <summary>The port broke.</summary>
    Dead,
}
