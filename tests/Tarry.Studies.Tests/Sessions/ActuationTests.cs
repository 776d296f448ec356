using System.Text.Json;
using Tarry.Studies.Sealing;
using Tarry.Studies.Sessions;

namespace Tarry.Studies.Tests.Sessions;

public class ActuationTests
{
    private const string Head = """{"format_version":1,"kind":"latency","sitting":"monday","condition":"pad","segments":[{"boot_id":7,"first_sequence":1,"tick_hz":16000000,"clock_fit":null}],"run":{"response":"edge","interval_min_us":70000,"interval_max_us":120000,"hold_us":20000,"time_out_us":60000,"rearm_us":10000,"seed":1""";
    private const string Tail = "}}";

    // The line from 20,000 to 60,000 in 8 ms is at 30,000 after a quarter of them, 2 ms: 32,000 ticks at 16 MHz.
    [Theory]
    [InlineData(20_000, 60_000, 30_000, 8_000, 32_000)]
    [InlineData(60_000, 20_000, 30_000, 8_000, 96_000)]
    [InlineData(20_000, 60_000, 20_000, 8_000, 0)]
    [InlineData(20_000, 60_000, 60_000, 8_000, 128_000)]
    [InlineData(20_000, 60_000, 30_000, 0, 0)]
    public void CrossingTicks_OfAnAxis_LieOnTheRamp(int low, int high, int threshold, long rampUs, long expected) =>
        Assert.Equal(expected, Settings(new Actuation("axis", new AxisActuation("dac", low, high, threshold, rampUs))).CrossingTicks(16_000_000));

    [Fact]
    public void CrossingTicks_OfAContact_AreNone()
    {
        Assert.Equal(0, Settings(null).CrossingTicks(16_000_000));
        Assert.Equal(0, Settings(new Actuation("matrix")).CrossingTicks(16_000_000));
    }

    [Theory]
    [InlineData("axis", "dac", 5, 5, 5, 0L)]
    [InlineData("axis", "dac", 0, 65_536, 5, 0L)]
    [InlineData("axis", "dac", -1, 65_535, 5, 0L)]
    [InlineData("axis", "dac", 100, 200, 99, 0L)]
    [InlineData("axis", "dac", 200, 100, 201, 0L)]
    [InlineData("axis", "dac", 100, 200, 150, -1L)]
    [InlineData("axis", "switch", 100, 200, 150, 1L)]
    [InlineData("axis", "spring", 100, 200, 150, 0L)]
    [InlineData("contact", "dac", 100, 200, 150, 0L)]
    [InlineData("pedal", "dac", 100, 200, 150, 0L)]
    public void Broken_OfWhatCannotBe_SaysSo(string kind, string drive, int low, int high, int threshold, long rampUs) =>
        Assert.NotNull(new Actuation(kind, new AxisActuation(drive, low, high, threshold, rampUs)).Broken());

    [Fact]
    public void Broken_OfAnAxisWithoutLevels_SaysSo() => Assert.NotNull(new Actuation("axis").Broken());

    [Fact]
    public void Sealed_WithAnAxis_ComesBackAsItWas()
    {
        var actuation = new Actuation("axis", new AxisActuation("dac", 100, 60_000, 30_000, 8_000));
        using var scratch = new ScratchStudy("quill-usb");
        using var held = scratch.Study.AcquireLock("test");
        var record = ScratchStudy.Record();
        using (var recorder = scratch.Study.Begin(held, record with { Run = record.Run! with { Actuation = actuation } }))
        {
            recorder.Append(ScratchStudy.Response(1));
            recorder.Seal();
        }

        Assert.Equal(actuation, scratch.Study.Read(record.Key).Record.Run!.Actuation);
    }

    [Fact]
    public void Read_RecordWithoutActuation_IsAContact() => Assert.Null(Read("").Run!.Actuation);

    [Fact]
    public void Read_RecordOfThePage_HasItsAxis() => Assert.Equal(
        new Actuation("axis", new AxisActuation("switch", 1, 3, 2, 0)),
        Read(""","actuation":{"kind":"axis","axis":{"drive":"switch","low":1,"high":3,"threshold":2,"ramp_us":0}}""").Run!.Actuation);

    [Fact]
    public void Read_RecordWhoseAxisCannotBe_IsRefused() => Assert.Throws<JsonException>(
        () => Read(""","actuation":{"kind":"axis","axis":{"drive":"dac","low":1,"high":1,"threshold":1,"ramp_us":5}}"""));

    private static SessionDocument Read(string actuation) =>
        SessionDocument.Read(System.Text.Encoding.UTF8.GetBytes(Head + actuation + Tail), "session.json");

    private static RunSettings Settings(Actuation? actuation) =>
        new("edge", 70_000, 120_000, 20_000, 60_000, 10_000, 1) { Actuation = actuation };
}
