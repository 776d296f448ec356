namespace Tarry.Web.Bench;

/// <summary>Whether a step of a sitting is done.</summary>
public enum SittingStepState
{
    /// <summary>Nothing is captured.</summary>
    ToDo,

    /// <summary>Its session is open: it can be gone on with.</summary>
    Begun,

    /// <summary>Its session is sealed.</summary>
    Done,
}
