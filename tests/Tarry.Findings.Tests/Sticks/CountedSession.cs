using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Tests.Sticks;

/// <summary>Positions in counts of a signed range of 16 bits as a session of one segment with microseconds for ticks.</summary>
internal static class CountedSession
{
    public static StickSession Of(string condition, string sitting, StickProcedure procedure, StickSamples samples, StickStimulus stimulus, double? uncertainty) => new(
        new SessionRecord
        {
            Key = new SessionKey(sitting, condition, procedure),
            Segments = [new Segment(null, 0, 1_000_000, null)],
            Stick = new StickSetup
            {
                Procedure = procedure,
                Source = "csv",
                X = new StickRange(-FaultyStick.Half, FaultyStick.Half, 1),
                Y = new StickRange(-FaultyStick.Half, FaultyStick.Half, 1),
                Stimulus = stimulus,
                StimulusUncertainty = uncertainty,
            },
        },
        samples);
}
