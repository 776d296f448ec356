namespace Tarry.Rig.Frames;

/// <summary>Why the rig did not do a command.</summary>
public enum RefusalReason
{
    /// <summary>The value is out of the parameter's range.</summary>
    Range,

    /// <summary>No such parameter.</summary>
    Key,

    /// <summary>Not while a run is on.</summary>
    State,

    /// <summary>A trial asked for is no longer held.</summary>
    Gone,

    /// <summary>No such command.</summary>
    Kind,

    /// <summary>The command's fields are not of its form.</summary>
    Form,
}
