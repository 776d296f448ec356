using Tarry.Studies.Sessions;

namespace Tarry.Studies.Sticks;

/// <summary>A session of the kind <c>stick</c>: its record, which says what was done, and the positions.</summary>
/// <param name="Record">What it is; its <see cref="SessionRecord.Stick"/> is there.</param>
/// <param name="Samples">The positions, in ticks of the record's one segment.</param>
public sealed record StickSession(SessionRecord Record, StickSamples Samples)
{
    /// <summary>What was done with the stick.</summary>
    public StickSetup Setup => Record.Stick
        ?? throw new InvalidOperationException($"Session {Record.Key} says nothing of a stick.");

    /// <summary>What is wrong with it, in words; null if nothing is.</summary>
    internal string? Broken() => this switch
    {
        { Record.Stick: null } => "it does not say what was done with the stick",
        { Record.Segments.Count: not 1 } => "it is not of one unbroken stretch of the tick counter",
        { Samples.Count: 0 } => "it has no positions",
        _ when Record.Key.Procedure is { } named && named != Setup.Procedure => "its name and its procedure do not agree",
        _ when Samples.Stimulus.IsEmpty != (Setup.Stimulus == StickStimulus.None) || Samples.StimulusY.IsEmpty != (Setup.Stimulus != StickStimulus.Level)
            => "the columns of its stimulus are not those that its stimulus needs",
        _ => Setup.Broken(),
    };
}
