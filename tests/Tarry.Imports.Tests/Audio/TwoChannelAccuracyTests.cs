using Tarry.Imports.Audio;
using Tarry.Imports.Recordings;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.Audio;

/// <summary>
/// Bias and standard deviation of latencies against the truth of made-up recordings. The limits are those of the table in
/// docs/formats/audio.md, found by an independent trial of the method, times 1.5, since 100 presses scatter.
/// All rows of the table, with 100 presses each, where <c>TARRY_LONG_TESTS=1</c> is set.
/// </summary>
public sealed class TwoChannelAccuracyTests : IDisposable
{
    private static readonly bool Complete = Environment.GetEnvironmentVariable("TARRY_LONG_TESTS") == "1";
    private static readonly int Presses = Complete ? 100 : 20;
    private readonly TemporaryFolder folder = new();

    /// <summary>Sample rate, decibels, hum, modulation Hz and depth, time constant ms, corner of the capacitor Hz, standard deviation of the table in us.</summary>
    public static TheoryData<int, double, double, double, double, double, double, double> Cases =>
    [
        (48_000, 40, 0, 0, 0, 0.3, 0, 16),
        (48_000, 20, 0, 0, 0, 0.3, 0, 77),
        (96_000, 20, 0, 0, 0, 0.3, 0, 52),
        (48_000, 20, 0.3, 0, 0, 0.3, 0, 84),
        (48_000, 20, 0, 18_000, 0.5, 0.3, 0, 88),
        (48_000, 20, 0.3, 1_000, 0.3, 0.3, 0, 316),
        (48_000, 20, 0, 0, 0, 3, 0, 139),
        (48_000, 40, 0, 0, 0, 3, 10, 139),
        .. Complete ?
        [
            (192_000, 20, 0, 0, 0, 0.3, 0, 41),
            (96_000, 40, 0, 0, 0, 0.3, 0, 15),
            (192_000, 40, 0, 0, 0, 0.3, 0, 15),
            (96_000, 20, 0.3, 0, 0, 0.3, 0, 56),
            (192_000, 20, 0, 18_000, 0.5, 0.3, 0, 49),
            (192_000, 20, 0.3, 1_000, 0.3, 0.3, 0, 282),
            (192_000, 20, 0, 0, 0, 3, 0, 77),
        ] : Array.Empty<(int, double, double, double, double, double, double, double)>(),
    ];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Latency_OfKnownTruth_IsFoundWithinTheTable(
        int rate, double db, double hum, double modulationHz, double depth, double tau, double corner, double limit)
    {
        var recording = new SyntheticRecording
        {
            SampleRate = rate, Presses = Presses, PressIntervalMs = 300, SignalToNoiseDb = db, Hum = hum, ModulationHz = modulationHz, ModulationDepth = depth, TimeConstantMs = tau, CouplingCornerHz = corner,
        };
        var plan = TwoChannelImport.Read(
            folder.Write("x.wav", recording.Wave()),
            new TwoChannelOptions { Window = new PairingWindow(1, 100), CouplingCornerHz = corner > 0 ? corner : null },
            new RecordingTarget(new SessionKey("monday", "quill"), []), cancellation: TestContext.Current.CancellationToken);
        var trials = plan.Sessions.Single().Trials;
        double[] errors = [.. recording.Truth().Zip(trials, (truth, trial) => (trial.LatencyTicks!.Value / 1e3) - (1e6 * truth.Latency))];
        var bias = errors.Average();
        var deviation = Math.Sqrt(errors.Average(error => (error - bias) * (error - bias)));
        TestContext.Current.TestOutputHelper!.WriteLine($"{rate} Hz, {db} dB, hum {hum}, {modulationHz} Hz, tau {tau}: bias {bias:0.0}, sd {deviation:0.0} us, table {limit}; {string.Join("; ", plan.Notes)}");
        Assert.Equal(recording.Presses, trials.Count);
        Assert.All(trials, trial => Assert.Equal(Outcome.Response, trial.Outcome));
        Assert.InRange(deviation, 0, 1.5 * limit);
        Assert.InRange(bias, -1.5 * limit, 1.5 * limit);
    }

    public void Dispose() => folder.Dispose();
}
