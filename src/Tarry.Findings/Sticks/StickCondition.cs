using Tarry.Findings.Sticks.Flicks;
using Tarry.Findings.Sticks.Measures;
using Tarry.Findings.Sticks.Ramps;
using Tarry.Findings.Sticks.Recordings;
using Tarry.Findings.Sticks.Rest;
using Tarry.Findings.Sticks.Rim;
using Tarry.Findings.Sticks.Stops;
using Tarry.Studies.Sticks;

namespace Tarry.Findings.Sticks;

/// <summary>The recordings of one condition and what each says.</summary>
internal sealed class StickCondition
{
    private readonly List<StickReading> readings = [];
    private readonly Dictionary<(StickMeasure, StickPart), StickRefusal> refusals = [];
    private readonly List<IReadOnlyList<Release>> releases = [];
    private readonly List<SessionStops> stops = [];

    public StickCondition(string id, IReadOnlyList<StickSession> sessions)
    {
        Id = id;
        Steps = AxisSteps.Of(sessions);
        foreach (var session in sessions)
        {
            var recording = new StickRecording(session, Steps);
            Recordings.Add(recording);
            Read(session, recording);
        }
    }

    public string Id { get; }

    public AxisSteps Steps { get; }

    public List<StickRecording> Recordings { get; } = [];

    public List<RestCloud> Clouds { get; } = [];

    public List<RestSpectrum> Spectra { get; } = [];

    public List<RimUnits> Rims { get; } = [];

    public List<NonLinearityCurve> Curves { get; } = [];

    public IReadOnlyList<ReturnDirection> Returns => ReturnDirections.Of(releases);

    public IReadOnlyList<StopError> Stops => StopErrors.Of(stops);

    /// <summary>What may be said of a measure: all that some session found or refused.</summary>
    public IEnumerable<(StickMeasure Measure, StickPart Part)> Known => readings.Select(reading => (reading.Measure, reading.Part)).Concat(refusals.Keys).Distinct();

    /// <summary>The readings of a measure that are used: where two procedures show it, those of the better one.</summary>
    public IReadOnlyList<StickReading> Of(StickMeasure measure, StickPart part)
    {
        var found = readings.Where(reading => reading.Measure == measure && reading.Part == part).ToList();
        return found.Count == 0 ? found : [.. found.GroupBy(Worth).MinBy(group => group.Key)!];
    }

    public StickRefusal Refusal(StickMeasure measure, StickPart part) =>
        refusals.GetValueOrDefault((measure, part)) ?? new StickRefusal(StickRefusalReason.TooFewReplicates, 1, 2);

    // A centre from rest before one from releases; hysteresis of the stick at known levels before that of turns, before that of the
    // electronics alone, in a substitution; known levels before assumed motion, unless they are so far apart that a dead zone may hide between.
    private static int Worth(StickReading reading) => reading switch
    {
        { Measure: StickMeasure.Hysteresis, Procedure: StickProcedure.Substitution } => 3,
        { Measure: StickMeasure.CentreOffset, ReplicateOf: "releases" } or { Measure: StickMeasure.Hysteresis, ReplicateOf: "turns each way" } => 1,
        { Measure: StickMeasure.InnerDeadZone, Hidden: > 0 } => 3,
        _ => reading.ReplicateOf.EndsWith("assumed", StringComparison.Ordinal) ? 2 : 0,
    };

    // Of each axis one curve: the first at known levels, else the first.
    private void Keep(IReadOnlyList<NonLinearityCurve> found)
    {
        foreach (var curve in found)
        {
            if (Curves.Exists(known => known.Part == curve.Part && (curve.SteadyMotionAssumed || !known.SteadyMotionAssumed)))
            {
                continue;
            }

            Curves.RemoveAll(known => known.Part == curve.Part);
            Curves.Add(curve);
        }
    }

    private void Read(StickSession session, StickRecording recording)
    {
        var said = new SessionReadings();
        ReportReadings.Add(said, recording);
        switch (recording.Setup.Procedure)
        {
            case StickProcedure.Rest:
                RestReadings.Add(said, recording);
                Clouds.AddRange(RestCloud.Of(recording) is { } cloud ? [cloud] : []);
                Spectra.AddRange(new[] { RestSpectrum.Of(recording, recording.X, StickPart.X), RestSpectrum.Of(recording, recording.Y, StickPart.Y) }.OfType<RestSpectrum>());
                break;
            case StickProcedure.FlickRelease:
                releases.Add(FlickReadings.Add(said, recording));
                break;
            case StickProcedure.RimSweep:
                AxisSteps.Add(said, session);
                Rims.AddRange(RimReadings.Add(said, recording) is { } units ? [units] : []);
                break;
            case StickProcedure.AngleStops:
                stops.AddRange(StopReadings.Add(said, recording) is { } visited ? [visited] : []);
                break;
            case StickProcedure.SlowRamp or StickProcedure.Substitution:
                AxisSteps.Add(said, session);
                Keep(RampReadings.Add(said, recording));
                break;
        }

        readings.AddRange(said.Found.Select(reading => reading with { Procedure = recording.Setup.Procedure }));
        foreach (var (measure, part, refusal) in said.Refused)
        {
            refusals.TryAdd((measure, part), refusal);
        }
    }
}
