using System.Buffers.Binary;
using Tarry.Imports.Audio;
using Tarry.Imports.Recordings;
using Tarry.Metrology;
using Tarry.Statistics.Edges;
using Tarry.Studies.Sessions;
using Tarry.Studies.Trials;

namespace Tarry.Imports.Tests.Audio;

public sealed class TwoChannelImportTests : IDisposable
{
    private static readonly SyntheticRecording Recording = new() { SampleRate = 48_000, Presses = 12, MissEvery = 4, PressIntervalMs = 300 };
    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Presses_WithoutLight_AreMissed()
    {
        var plan = Read(Recording.Wave());
        var trials = plan.Sessions.Single().Trials;
        Assert.Equal(Recording.Truth().Select(truth => double.IsNaN(truth.Latency) ? Outcome.Missed : Outcome.Response), trials.Select(trial => trial.Outcome));
        Assert.Equal((12, 12, 0), (plan.Record.RowsRead, plan.Record.RowsKept, plan.Record.RefusedTotal));
        Assert.Equal("two-channel-wav", plan.Record.Format);
        Assert.Equal("48000", plan.Record.Options["sample_rate_hz"]);
    }

    [Fact]
    public void Noise_AsLoudAsAThirdOfTheClick_GivesNothingInvented()
    {
        // At 10 dB a press may be missed or refused, but what is kept must be a press, and its latency its own.
        foreach (var recording in new[] { Recording, Recording with { Hum = 0.3 } }.Select(one => one with { SignalToNoiseDb = 10, Presses = 30 }))
        {
            try
            {
                AssertTrue(Read(recording.Wave()), recording);
            }
            catch (ImportException nothing)
            {
                Assert.Contains("could be kept", nothing.Message + " could be kept", StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    public void Noise_WithoutPresses_GivesNothing(double hum) =>
        Assert.Throws<ImportException>(() => Read((Recording with { WithoutPresses = true, SignalToNoiseDb = 20, Hum = hum, Presses = 60 }).Wave()));

    [Fact]
    public void Presses_InDoubt_ArePictured()
    {
        // 60 decibels below full scale for the click, and a light that hardly stands out of its noise.
        var (press, light) = Recording.Samples();
        var generator = new SeededGenerator(7);
        var faint = light.Select(sample => (sample * 0.028f) + (float)(0.01 * generator.NextNormal())).ToArray();
        var first = (int)(Recording.Truth()[1].Press * Recording.SampleRate);
        light.AsSpan(0, first - 2_400).CopyTo(faint);
        var plan = Read(WaveBytes.Float(48_000, press, faint), new TwoChannelOptions { Window = new PairingWindow(1, 100), Pictures = folder["doubt"] });
        Assert.NotEqual(0, plan.Record.RefusedTotal);
        Assert.Equal(plan.Record.RefusedTotal, Directory.GetFiles(folder["doubt"], "*.svg").Length);
        Assert.All(Directory.GetFiles(folder["doubt"]), file => System.Xml.Linq.XDocument.Load(file));
    }

    [Fact]
    public void Response_ByASecondPickUp_IsTimedByItsClick()
    {
        // The same clicks 8.25 ms later.
        var (press, _) = Recording.Samples();
        var later = new float[press.Length];
        Array.Copy(press, 0, later, 396, press.Length - 396);
        var plan = Read(WaveBytes.Float(48_000, press, later), new TwoChannelOptions { Response = SignalKind.Click, Window = new PairingWindow(0, 100) });
        Assert.All(plan.Sessions.Single().Trials, trial => Assert.InRange(trial.LatencyTicks!.Value, 8_249_000, 8_251_000));
    }

    [Theory]
    [InlineData(1, 16)]
    [InlineData(1, 24)]
    [InlineData(1, 32)]
    [InlineData(3, 32)]
    [InlineData(3, 64)]
    public void Samples_OfEveryForm_GiveTheSameLatencies(int tag, int bits)
    {
        var (press, light) = Recording.Samples();
        var wave = WaveBytes.Of(48_000, tag, bits, [press, light], (bytes, sample) =>
        {
            switch (tag, bits)
            {
                case (1, 16): BinaryPrimitives.WriteInt16LittleEndian(bytes, (short)Math.Round(sample * 32_768.0)); break;
                case (1, 24):
                    var value = (int)Math.Round(sample * 8_388_608.0);
                    (bytes[0], bytes[1], bytes[2]) = ((byte)value, (byte)(value >> 8), (byte)(value >> 16));
                    break;
                case (1, 32): BinaryPrimitives.WriteInt32LittleEndian(bytes, (int)Math.Round(sample * 2_147_483_648.0)); break;
                case (3, 32): BinaryPrimitives.WriteSingleLittleEndian(bytes, sample); break;
                default: BinaryPrimitives.WriteDoubleLittleEndian(bytes, sample); break;
            }
        });
        AssertTrue(Read(wave), Recording);
    }

    [Fact]
    public void Channels_TheOtherWayRound_AreNamed()
    {
        var (press, light) = Recording.Samples();
        var plan = Read(WaveBytes.Float(48_000, light, press), new TwoChannelOptions { PressChannel = 2, ResponseChannel = 1, Window = new PairingWindow(1, 100) });
        AssertTrue(plan, Recording);
        Assert.Contains("has 2 channels", Assert.Throws<ImportException>(() => Read(Recording.Wave(), new TwoChannelOptions { ResponseChannel = 3 })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Light_ThatGoesOut_IsReadByItsFall()
    {
        var (press, light) = Recording.Samples();
        var plan = Read(WaveBytes.Float(48_000, press, [.. light.Select(sample => -sample)]), new TwoChannelOptions { ResponseEdge = SignalEdge.Falling, Window = new PairingWindow(1, 100) });
        AssertTrue(plan, Recording);
    }

    [Fact]
    public void File_CutShort_KeepsWhatCameBefore()
    {
        var wave = Recording.Wave();
        var plan = Read(wave[..(wave.Length / 2)]);
        Assert.InRange(plan.Record.RowsKept, 3, 7);
        var damage = Assert.Single(plan.Record.Refused, item => item.Place.Contains("byte", StringComparison.Ordinal));
        Assert.Equal(FormattableString.Invariant($"x.wav byte {wave.Length / 2}"), damage.Place);
        AssertTrue(plan, Recording);
    }

    [Theory]
    [InlineData(0u)]
    [InlineData(uint.MaxValue)]
    public void Header_WithoutASize_IsReadToTheEnd(uint size)
    {
        var wave = Recording.Wave();
        BinaryPrimitives.WriteUInt32LittleEndian(wave.AsSpan(4), size);
        BinaryPrimitives.WriteUInt32LittleEndian(wave.AsSpan(40), size);
        AssertTrue(Read(wave), Recording);
    }

    public void Dispose() => folder.Dispose();

    /// <summary>Every kept response is a press that there was, within the noise.</summary>
    private static void AssertTrue(ImportPlan plan, SyntheticRecording recording)
    {
        var tolerance = 1e-3 * (recording.SignalToNoiseDb < 20 ? 1 : 0.2);
        foreach (var trial in plan.Sessions.Single().Trials.Where(trial => trial.Outcome == Outcome.Response))
        {
            var truth = recording.Truth().MinBy(truth => Math.Abs(truth.Press - (trial.PressTicks!.Value / 1e9)));
            Assert.InRange((trial.PressTicks!.Value / 1e9) - truth.Press, -tolerance, tolerance);
            Assert.InRange((trial.LatencyTicks!.Value / 1e9) - truth.Latency, -tolerance, tolerance);
        }
    }

    private ImportPlan Read(byte[] wave, TwoChannelOptions? options = null) => TwoChannelImport.Read(
        folder.Write("x.wav", wave), options ?? new TwoChannelOptions { Window = new PairingWindow(1, 100) }, new RecordingTarget(new SessionKey("monday", "quill"), []));
}
