using System.Security.Cryptography;
using System.Runtime.InteropServices;
using Tarry.Metrology;
using Tarry.Rig.SimulatedBench.Sticks;
using Tarry.Studies;
using Tarry.Studies.Sessions;
using Tarry.Studies.Sticks;
using Tarry.Studies.StudyFiles;

namespace Tarry.Demo;

/// <summary>The sticks of the demonstration: what testers meet, with the truth behind each, and a layer that reshapes one of them.</summary>
internal static class DemoSticks
{
    /// <summary>The sittings in which the sticks were recorded.</summary>
    public static readonly IReadOnlyList<string> Sittings = ["monday", "tuesday", "wednesday"];

    private const double SittingOffsetSd = 0.004;

    // Rests beside the middle, and its axes reach differently far, neither to the end of the range.
    private static readonly SimulatedStick Quill = new()
    {
        ReportIntervalMs = 2, OffsetX = 0.018, OffsetY = -0.011, GainX = 0.96, GainY = 0.93, NoiseSd = 0.0012, Play = 0.004, ReturnSd = 0.006, RingingHz = 24, RingingDamping = 0.35,
    };

    // A worn one: play, friction, drift, a dead zone that hides the centre, and the last part of the way lost.
    private static readonly SimulatedStick Ferrule = new()
    {
        ReportIntervalMs = 4, Maximum = 255, OffsetX = -0.03, OffsetY = 0.02, Play = 0.02, ReturnSd = 0.025, NoiseSd = 0.004, DriftPerMinute = 0.01, RadialDeadZone = 0.09, Saturation = 0.06, RingingHz = 18,
    };

    // Maps the circle to a square, leans, and swings long after it is let go.
    private static readonly SimulatedStick Tamarind = new()
    {
        ReportIntervalMs = 8, Maximum = 1_023, SkewDeg = 3.5, OffsetY = 0.012, NoiseSd = 0.002, Play = 0.006, ReturnSd = 0.01, AxialDeadZone = 0.04, MapsToSquare = true, RingingHz = 14, RingingDamping = 0.12, SmoothingMs = 6,
    };

    // The remapper stretches small ways less than large ones, and speaks in 16 bits.
    private static readonly SimulatedStick Remapper = new() { Minimum = -32_768, Maximum = 32_767, RadialDeadZone = 0.05, CurvePower = 1.6 };

    private static readonly IReadOnlyList<(ConditionEntry Entry, SimulatedStick Stick)> Conditions =
    [
        Of("quill-stick", "Quill 2", "0041", "none", 500, Quill),
        Of("ferrule-stick", "Ferrule One", "F-117", "none", 250, Ferrule),
        Of("ferrule-stick-remapper", "Ferrule One", "F-117", "remapper", 250, Ferrule with { Layer = Remapper }),
        Of("tamarind-stick", "Tamarind", "20-3", "none", 125, Tamarind),
    ];

    /// <summary>How many recordings there are: one a condition and sitting, of all procedures.</summary>
    public static int Count => Sittings.Count * Conditions.Count;

    /// <summary>Seals all of them.</summary>
    public static void Record(Study study, StudyLock held, ulong seed, Action<SessionKey> progress, CancellationToken cancellation)
    {
        var random = SeededGenerator.ForPart(seed, 0x571C);
        foreach (var sitting in Sittings)
        {
            foreach (var (entry, stick) in Conditions)
            {
                cancellation.ThrowIfCancellationRequested();
                var key = new SessionKey(sitting, entry.Id);
                progress(key);
                var settled = stick with { OffsetX = stick.OffsetX + (SittingOffsetSd * random.NextNormal()), OffsetY = stick.OffsetY + (SittingOffsetSd * random.NextNormal()) };
                var sessions = Enum.GetValues<StickProcedure>()
                    .Select(procedure => Session(key, procedure, settled, SimulatedStickRecording.Of(settled, procedure, random.NextUInt64(), Pace(procedure))))
                    .ToList();
                study.SealImported(held, sessions, Import(key, sessions), [entry]);
            }
        }
    }

    // Twice as fast as the guide has it, but for rest: a minute tells drift.
    private static double Pace(StickProcedure procedure) => procedure == StickProcedure.Rest ? 1 : 2;

    private static StickSession Session(SessionKey key, StickProcedure procedure, SimulatedStick stick, StickSamples samples) => new(
        new SessionRecord
        {
            Key = new SessionKey(key.Sitting, key.Condition, procedure),
            Segments = [new Segment(null, 1, SimulatedStickRecording.TickHz, null)],
            Stick = SimulatedStickRecording.Setup(stick, procedure),
            Host = "simulated host",
            Events = ["a simulated stick: nothing here is about a real one"],
        },
        samples);

    /// <summary>There is no file; what is hashed is what a recording would have held.</summary>
    private static ImportRecord Import(SessionKey key, List<StickSession> sessions)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var samples in sessions.Select(session => session.Samples))
        {
            hash.AppendData(MemoryMarshal.AsBytes(samples.Ticks));
            hash.AppendData(MemoryMarshal.AsBytes(samples.X));
            hash.AppendData(MemoryMarshal.AsBytes(samples.Y));
        }

        var positions = sessions.Sum(session => (long)session.Samples.Count);
        return new ImportRecord
        {
            FileName = $"{key} (simulated stick)",
            Sha256 = Convert.ToHexStringLower(hash.GetHashAndReset()),
            Format = "simulated-stick",
            RowsRead = positions,
            RowsKept = positions,
            RefusedTotal = 0,
        };
    }

    private static (ConditionEntry Entry, SimulatedStick Stick) Of(string id, string device, string unit, string layer, double nominalReportHz, SimulatedStick stick) => (
        new ConditionEntry
        {
            Id = id,
            Factors = new Dictionary<string, string>
            {
                ["device"] = device,
                ["unit"] = unit,
                ["link"] = "usb",
                ["layer"] = layer,
                ["control"] = "stick",
                ["placement"] = "0.3 m",
            },
            NominalReportHz = nominalReportHz,
        },
        stick);
}
