using System.Diagnostics;
using System.Text;
using Tarry.Imports.Audio;
using Tarry.Imports.Recordings;
using Tarry.Imports.Tests.Audio;
using Tarry.Imports.Tests.ValueChangeDump;
using Tarry.Imports.UsbWire;
using Tarry.Imports.ValueChangeDump;
using Tarry.Imports.Video;
using Tarry.Metrology;
using Tarry.Studies.Sessions;

namespace Tarry.Imports.Tests;

/// <summary>
/// Damaged recordings, from a seed (30,000 where <c>TARRY_LONG_TESTS=1</c> is set, else 1,500): bytes flipped, cut out, doubled, overwritten, and files of other kinds. Each is read or refused by
/// name: nothing else may come out, and what is kept adds up.
/// </summary>
public sealed class HostileRecordingTests : IDisposable
{
    private static readonly int Inputs = Environment.GetEnvironmentVariable("TARRY_LONG_TESTS") == "1" ? 10_000 : 500;
    private static readonly RecordingTarget Target = new(new SessionKey("monday", "quill"), []);
    private static readonly string[] DumpWords =
    [
        "#0", "#99999999999999999999", "#18446744073709551615", "0!", "1\"", "x!", "z\"", "b101 \"", "b", "r1e400 !", "rnan !", "$dumpoff", "$dumpon", "$end", "$comment", "$var wire 1 ! a $end",
        "$var wire 99999999999 ! a $end", "$timescale 1 s $end", "$enddefinitions $end", "\0\0\0\0", "1", "#-5", "\u007f", "$scope module", "s text !",
    ];

    private readonly TemporaryFolder folder = new();

    [Fact]
    public void Dumps_DamagedInAnyWay_AreReadOrRefused()
    {
        var whole = Encoding.UTF8.GetBytes(DumpText.Presses(8_125, 3_000, 20_000));
        var options = new ValueChangeDumpOptions { PressChannel = "contact", ResponseChannel = "lamp", Window = new PairingWindow(0.5, 60) };
        Check(whole, DumpWords, path => ValueChangeDumpImport.Read(path, options, Target), Inputs);
    }

    [Fact]
    public void Cables_DamagedInAnyWay_AreReadOrRefused()
    {
        var whole = Encoding.UTF8.GetBytes(DumpText.Presses(8_125, 3_000, 20_000));
        Check(whole, DumpWords, path =>
        {
            UsbCableRecording.Read(path, new UsbCable("contact", "lamp", UsbCableSpeed.Low));
            return null;
        }, Inputs / 10);
    }

    [Fact]
    public void Sounds_DamagedInAnyWay_AreReadOrRefused()
    {
        var generator = new SeededGenerator(21);
        float[][] channels = [.. Enumerable.Range(0, 2).Select(_ => Enumerable.Range(0, 500).Select(at => at % 180 == 90 ? 0.9f : 0.001f * (float)generator.NextNormal()).ToArray())];
        string[] words = ["RIFF", "RF64", "data", "fmt ", "LIST", "\0\0\0\0", "\u00ff\u00ff\u00ff\u00ff", "\u007f\u00f0\0\0", "ds64"];
        Check(WaveBytes.Float(8_000, channels), words, path => TwoChannelImport.Read(path, new TwoChannelOptions { Window = new PairingWindow(0, 20), DebounceMs = 5, Response = SignalKind.Click }, Target), Inputs / 2);
        Check(WaveBytes.Float(8_000, channels), words, path => TwoChannelImport.Read(path, new TwoChannelOptions { Window = new PairingWindow(0, 20), DebounceMs = 5 }, Target), Inputs / 2);
    }

    [Fact]
    public void Tables_DamagedInAnyWay_AreReadOrRefused()
    {
        var text = new StringBuilder("pts_time,press,response\n");
        for (var frame = 0; frame < 40; frame++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{frame / 100.0:0.00},{(frame % 20 > 9 ? 200 : 20)},{(frame % 20 > 12 ? 180 : 30)}\n");
        }

        string[] words = ["nan", "inf", "1e308", "-1e308", ",,,,", "\"", "\n\n", "\r", "0.5", "pts_time", "\0", "-0", "999999999999"];
        Check(Encoding.UTF8.GetBytes(text.ToString()), words, path => VideoImport.Read(path, new VideoOptions { CaptureFps = 100, Window = new PairingWindow(0, 100) }, Target), Inputs * 9 / 10);
    }

    public void Dispose() => folder.Dispose();

    private void Check(byte[] whole, string[] words, Func<string, ImportPlan?> read, int inputs)
    {
        var clock = Stopwatch.StartNew();
        var before = GC.GetTotalMemory(forceFullCollection: true);
        for (var input = 0; input < inputs; input++)
        {
            var bytes = Damaged(whole, words, SeededGenerator.ForPart(20, (ulong)input));
            var path = folder.Write("x", bytes);
            try
            {
                if (read(path) is { } plan)
                {
                    var trials = plan.Sessions.Single().Trials;
                    Assert.Equal(plan.Record.RowsRead, plan.Record.RowsKept + plan.Record.RefusedTotal);
                    Assert.Equal(plan.Record.RowsRead, trials.Count + plan.Record.RefusedUnassigned);
                    Assert.InRange(trials.Count, 1, bytes.Length);
                    Assert.All(trials, trial => Assert.True(trial.PressTicks >= 0 && trial.LatencyTicks is null or >= 0 && !(trial.LatencyHighTicks < trial.LatencyTicks)));
                }
            }
            catch (ImportException refused)
            {
                Assert.NotEmpty(refused.Remedy);
            }
            catch (Exception other) when (other is not Xunit.Sdk.XunitException)
            {
                Assert.Fail($"Input {input} gave {other}");
            }
        }

        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - before, long.MinValue, 50_000_000);
        Assert.InRange(clock.Elapsed, TimeSpan.Zero, TimeSpan.FromMinutes(5));
    }

    private static byte[] Damaged(byte[] whole, string[] words, SeededGenerator generator)
    {
        var bytes = new List<byte>(whole);
        for (var count = 1 + generator.NextInt32(4); count > 0 && bytes.Count > 0; count--)
        {
            var at = generator.NextInt32(bytes.Count);
            var length = Math.Min(bytes.Count - at, 1 + generator.NextInt32(64));
            switch (generator.NextInt32(7))
            {
                case 0:
                    bytes[at] ^= (byte)(1 << generator.NextInt32(8));
                    break;
                case 1:
                    bytes.RemoveRange(at, length);
                    break;
                case 2:
                    bytes.InsertRange(at, bytes.GetRange(at, length));
                    break;
                case 3:
                    bytes.RemoveRange(at, bytes.Count - at);
                    break;
                case 4:
                    bytes[at] = (byte)generator.NextInt32(256);
                    break;
                case 5:
                    bytes.InsertRange(at, Encoding.Latin1.GetBytes(words[generator.NextInt32(words.Length)]));
                    break;
                default:
                    var word = Encoding.Latin1.GetBytes(words[generator.NextInt32(words.Length)]);
                    bytes.RemoveRange(at, Math.Min(word.Length, bytes.Count - at));
                    bytes.InsertRange(at, word);
                    break;
            }
        }

        return [.. bytes];
    }
}
