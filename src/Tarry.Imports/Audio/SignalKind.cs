namespace Tarry.Imports.Audio;

/// <summary>What a channel of a sound recording holds.</summary>
public enum SignalKind
{
    /// <summary>The sound of a switch, or the step of its contact.</summary>
    Click,

    /// <summary>A light sensor.</summary>
    Light,
}
